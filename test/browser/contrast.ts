import type { Page } from "playwright-core";

export interface MarkContrast {
  readonly what: string;
  readonly ratio: number;
}

/**
 * Contrast (WCAG 2.2, relative luminance) of every data mark's stroke or fill and of every piece of text
 * with the ground behind it, from computed styles; of controls, the frame that shows where they are. Grounds: the
 * page, the plot, and its shaded phases. Only what is shown counts.
 */
export function contrasts(page: Page): Promise<{
  marks: MarkContrast[];
  texts: MarkContrast[];
  controls: MarkContrast[];
  smallestPx: number;
}> {
  return page.evaluate(() => {
    type Rgb = readonly [number, number, number, number];
    const parse = (text: string): Rgb | null => {
      const numbers = text.match(/[\d.]+/g)?.map(Number);
      if (!text.startsWith("rgb") || !numbers) return null;
      return [numbers[0] ?? 0, numbers[1] ?? 0, numbers[2] ?? 0, numbers[3] ?? 1];
    };
    const over = (top: Rgb, ground: Rgb): Rgb => {
      const mix = (index: 0 | 1 | 2) => top[index] * top[3] + ground[index] * (1 - top[3]);
      return [mix(0), mix(1), mix(2), 1];
    };
    const luminance = (color: Rgb) => {
      const part = (value: number) => {
        const share = value / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      };
      return 0.2126 * part(color[0]) + 0.7152 * part(color[1]) + 0.0722 * part(color[2]);
    };
    const ratio = (a: Rgb, b: Rgb) => {
      const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
      return (high + 0.05) / (low + 0.05);
    };
    const ground = (element: Element): Rgb => {
      for (let up: Element | null = element; up; up = up.parentElement) {
        const color = parse(getComputedStyle(up).backgroundColor);
        if (color && color[3] === 1) return color;
      }
      return [255, 255, 255, 1];
    };
    const tints = [...document.querySelectorAll(".plot rect[class^=tint], .plot .gap")]
      .map((rect) => parse(getComputedStyle(rect).fill))
      .filter((color): color is Rgb => color !== null);
    const grounds = (element: Element): Rgb[] => {
      const own = ground(element);
      return element.closest(".plot, .phase-names") ? [own, ...tints.map((tint) => over(tint, own))] : [own];
    };
    const worst = (color: Rgb, element: Element) =>
      Math.min(...grounds(element).map((behind) => ratio(over(color, behind), behind)));
    const name = (element: Element) => `${element.tagName}.${element.getAttribute("class") ?? ""}`;
    const marks: MarkContrast[] = [];
    const selector =
      ".points line, .points circle, .points path, .plan-line, .spread, .dots, .spread-area, .plane-disc, .plane-ring, .plane-bar, .step-bar, .step-head, .step-cut, .step-join, .sum-rest, .sum-taken, .line, .wall, .mark circle, .end circle, .end path, .point, .plan, .interval, .band, .budget-base, .gap, .phase-edge, .shape, .cursor-line, .cursor-dot, .banded, .leader";
    for (const element of document.querySelectorAll(selector)) {
      if (!element.checkVisibility()) continue;
      const style = getComputedStyle(element);
      const colors = [parse(style.stroke), parse(style.fill)].filter((color): color is Rgb => color !== null);
      const found = colors.map((color) => worst(color, element));
      marks.push({ what: name(element), ratio: Math.max(0, ...found) });
    }
    const texts: MarkContrast[] = [];
    let smallestPx = 99;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (!element || !node.textContent?.trim() || element.closest("script, style")) continue;
      if (!element.checkVisibility()) continue;
      const style = getComputedStyle(element);
      const color = parse(element.closest("svg") ? style.fill : style.color);
      if (color === null) continue;
      texts.push({ what: `${name(element)} ${node.textContent.slice(0, 20)}`, ratio: worst(color, element) });
      smallestPx = Math.min(smallestPx, Number.parseFloat(style.fontSize));
    }
    const controls: MarkContrast[] = [];
    for (const element of document.querySelectorAll("button, select, input, .drop, progress")) {
      const style = getComputedStyle(element);
      const edge = parse(style.borderBottomColor);
      const isFramed = Number.parseFloat(style.borderBottomWidth) > 0 && edge !== null && edge[3] > 0;
      // Without a frame it is text, and counts as that.
      if (!element.checkVisibility() || !isFramed) continue;
      const behind = ground(element.parentElement ?? element);
      controls.push({ what: name(element), ratio: ratio(over(edge, behind), behind) });
      if (!(element instanceof HTMLInputElement) || element.placeholder === "") continue;
      const words = parse(getComputedStyle(element, "::placeholder").color);
      if (words !== null)
        texts.push({ what: `placeholder of ${name(element)}`, ratio: worst(words, element) });
    }
    return { marks, texts, controls, smallestPx };
  });
}
