import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type FlightReportInput, flightReport } from "../../src/show/report/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { sampleInput, sampleInputOfTwo, sampleQuestion } from "../support/sampleCheck.ts";
import { hasBrowser, openBrowser, withBrowser } from "./browser.ts";
import { contrasts } from "./contrast.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

const LONG_PLAIN = "x".repeat(100);
const STRINGS_AT_ONCE = 3;

/** A page and everything it did that it should not have done. */
interface Watched {
  readonly page: Page;
  readonly problems: string[];
}

describe.skipIf(!hasBrowser())(withBrowser("the report in a browser"), () => {
  let browser: Browser;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "report-"));
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(text: string, options: BrowserContextOptions = {}): Promise<Watched> {
    const file = join(folder, "report.html");
    writeFileSync(file, text);
    const context = await browser.newContext({
      offline: true,
      viewport: { width: 1280, height: 900 },
      ...options,
    });
    const page = await context.newPage();
    const problems: string[] = [];
    const address = pathToFileURL(file).href;
    page.on("pageerror", (error) => problems.push(`error: ${error.message}`));
    page.on("console", (message) => problems.push(`console: ${message.text()}`));
    page.on("request", (request) => {
      if (request.url() !== address) problems.push(`request: ${request.url()}`);
    });
    page.on("framenavigated", (frame) => {
      if (frame.url() !== address && frame.url() !== "about:blank") problems.push(`went to ${frame.url()}`);
    });
    await page.addInitScript(() => {
      document.addEventListener("securitypolicyviolation", (event) => {
        console.log(`policy: ${event.violatedDirective} ${event.blockedURI}`);
      });
    });
    await page.goto(address);
    return { page, problems };
  }

  const INPUTS: readonly (readonly [string, FlightReportInput])[] = [
    ["a flight", sampleInput()],
    ["a full flight", sampleInput({ cellChannels: true, moreTemperatures: true })],
    ["a bench run", sampleInput({ kind: "benchRun" })],
    ["two flights", sampleInputOfTwo()],
    ["a question", sampleQuestion()],
  ];

  it.each(INPUTS)("%s opens from disk offline: no error, no violation, no request", async (_name, input) => {
    const { page, problems } = await open(flightReport(input));
    const pads = page.locator(".cursor-pad");
    if ((await pads.count()) > 0) {
      await pads.first().hover({ position: { x: 100, y: 40 } });
      await page.locator("[data-act=in]").first().click();
    }
    expect(problems).toEqual([]);
    await page.context().close();
  });

  it.each(["light", "dark"] as const)(
    "has no axe violation in %s at 320, 768 and 1280 px",
    async (colorScheme) => {
      const { page } = await open(flightReport(sampleInput({ cellChannels: true, moreTemperatures: true })), {
        colorScheme,
      });
      await page.evaluate(AXE);
      await page.locator(".cursor-pad").first().press("Home");
      for (const width of [320, 768, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        const found = await page.evaluate(async (tags) => {
          const axe = (
            globalThis as unknown as {
              axe: {
                run: (
                  what: unknown,
                  how: unknown,
                ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
              };
            }
          ).axe;
          const { violations } = await axe.run(document, { runOnly: tags });
          return violations.map(
            ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`,
          );
        }, AXE_TAGS);
        expect(found, `${width} px`).toEqual([]);
      }
      await page.context().close();
    },
  );

  it.each(["light", "dark"] as const)(
    "shows every mark at 3:1 and every text at 4.5:1 in %s",
    async (colorScheme) => {
      const { page } = await open(flightReport(sampleInput({ cellChannels: true, moreTemperatures: true })), {
        colorScheme,
      });
      await page.locator(".cursor-pad").first().press("Home");
      const { marks, texts, smallestPx } = await contrasts(page);
      expect(marks.length).toBeGreaterThan(100);
      expect(marks.filter(({ ratio }) => ratio < 3)).toEqual([]);
      expect(texts.length).toBeGreaterThan(300);
      expect(texts.filter(({ ratio }) => ratio < 4.5)).toEqual([]);
      expect(smallestPx).toBeGreaterThanOrEqual(12);
      await page.context().close();
    },
  );

  it("sees a mark that is too faint (the contrast test can fail)", async () => {
    const { page } = await open(flightReport(sampleInput()), { bypassCSP: true });
    await page.addStyleTag({ content: ":root { --two: #f5e663 }" });
    const { marks } = await contrasts(page);
    expect(marks.some(({ ratio }) => ratio < 3)).toBe(true);
    await page.context().close();
  });

  it.each([320, 768, 1280])("never scrolls sideways at %i px, also with wide text spacing", async (width) => {
    const { page } = await open(flightReport(sampleInput({ text: "x".repeat(300) })), {
      viewport: { width, height: 800 },
      bypassCSP: true,
    });
    const overflow = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(await overflow()).toBeLessThanOrEqual(0);
    // WCAG 2.2, 1.4.12 text spacing.
    await page.addStyleTag({
      content:
        "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }",
    });
    expect(await overflow()).toBeLessThanOrEqual(0);
    await page.context().close();
  });

  it("gives every target at least 24 px each way", async () => {
    for (const width of [320, 1280]) {
      const { page } = await open(flightReport(sampleInput()), { viewport: { width, height: 800 } });
      const small = await page.evaluate(() =>
        [...document.querySelectorAll("button, summary, .cursor-pad, a")]
          .map((element) => ({ box: element.getBoundingClientRect(), html: element.outerHTML.slice(0, 80) }))
          .filter(({ box }) => box.width < 24 || box.height < 24)
          .map(({ html }) => html),
      );
      expect(small).toEqual([]);
      await page.context().close();
    }
  });

  it("draws all panels of a flight on one time axis", async () => {
    const { page } = await open(flightReport(sampleInput()));
    const edges = await page.evaluate(() =>
      [...document.querySelectorAll("svg.plot")].map((plot) => {
        const { left, right } = plot.getBoundingClientRect();
        return [left, right];
      }),
    );
    expect(edges).toHaveLength(5);
    expect(new Set(edges.map((edge) => edge.join())).size).toBe(1);
    await page.context().close();
  });

  it("leaves the hole open: no line crosses it", async () => {
    const { page } = await open(flightReport(sampleInput()));
    const crossings = await page.evaluate(() =>
      [...document.querySelectorAll(".panel")].flatMap((panel) => {
        const hole = panel.querySelector(".gap")?.getBoundingClientRect();
        const path = panel.querySelector(".line");
        const plot = panel.querySelector("svg.plot")?.getBoundingClientRect();
        if (!hole || !path || !plot) return ["nothing drawn"];
        const xs = [...(path.getAttribute("d") ?? "").matchAll(/[ML](\d+),/g)].map(
          (m) => plot.left + (Number(m[1]) / 8000) * plot.width,
        );
        return xs.filter((x) => x > hole.left + 1 && x < hole.right - 1).map(String);
      }),
    );
    expect(crossings).toEqual([]);
    const pieces = await page.locator('[data-panel="power"] .line').getAttribute("d");
    expect(pieces?.match(/M/g)).toHaveLength(2);
    await page.context().close();
  });

  it.each(["A4", "Letter"])(
    "prints on %s with headline, budget and charts on the first two pages",
    async (format) => {
      const { page } = await open(flightReport(sampleInput()));
      const print = async () => {
        const pdf = await page.pdf({ format, printBackground: false });
        return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length;
      };
      expect(await print()).toBeLessThanOrEqual(12);
      // What follows the charts is taken away, so that the count of pages is the charts' last page.
      await page.evaluate(() => {
        for (const table of document.querySelectorAll("details.table")) table.remove();
        for (const end of [document.querySelector(".stack"), document.querySelector(".flight")]) {
          while (end?.nextElementSibling) end.nextElementSibling.remove();
        }
        document.querySelector("footer")?.remove();
      });
      expect(await page.locator(".panel").count()).toBe(5);
      expect(await print()).toBe(2);
      await page.context().close();
    },
  );

  it("prints no chart cut and every table open, after the charts", async () => {
    const { page } = await open(flightReport(sampleInput()));
    await page.emulateMedia({ media: "print" });
    const seen = await page.evaluate(() => {
      const bottoms = [...document.querySelectorAll(".panel")].map(
        (panel) => panel.getBoundingClientRect().bottom,
      );
      const tables = [...document.querySelectorAll("details.table")];
      return {
        cuts: [...document.querySelectorAll(".panel")].map((panel) => getComputedStyle(panel).breakInside),
        areAfter: tables.every((table) => table.getBoundingClientRect().top >= Math.max(...bottoms)),
        heights: tables.map((table) => table.querySelector("tbody")?.getBoundingClientRect().height ?? 0),
      };
    });
    expect(new Set(seen.cuts)).toEqual(new Set(["avoid"]));
    expect(seen.areAfter).toBe(true);
    expect(Math.min(...seen.heights)).toBeGreaterThan(100);
    await page.context().close();
  });

  it("is read by keyboard alone: cursor, zoom, every value, tables", async () => {
    const { page } = await open(flightReport(sampleInput()));
    const seen: string[] = [];
    for (let step = 0; step < 60; step++) {
      await page.keyboard.press("Tab");
      const name = await page.evaluate(() => {
        const element = document.activeElement;
        return element?.getAttribute("aria-label") ?? element?.textContent?.slice(0, 40) ?? "";
      });
      if (name === "" || name === seen[0]) break;
      seen.push(name);
    }
    expect(seen).toEqual(
      expect.arrayContaining([
        "Zoom in",
        "Cursor in Power",
        "Power as a table",
        "Cursor in Current",
        "Cursor in Volts per cell",
        "Cursor in Shaft speed",
        "Cursor in Controller temperature",
      ]),
    );
    expect(seen.indexOf("Cursor in Power")).toBeLessThan(seen.indexOf("Cursor in Current"));

    const pad = page.getByRole("slider", { name: "Cursor in Power" });
    await pad.focus();
    await page.keyboard.press("Home");
    for (let tens = 0; tens < 30; tens++) await page.keyboard.press("Shift+ArrowRight");
    const values = await page
      .getByRole("slider")
      .evaluateAll((all) => all.map((one) => one.getAttribute("aria-valuetext")));
    expect(values).toHaveLength(5);
    for (const value of values) expect(value).toMatch(/^[\d.]+ (W|A|V|rev\/min|°C) at 0:30\.0, taxi/);
    await page.keyboard.press("ArrowRight");
    expect(await pad.getAttribute("aria-valuetext")).toContain("at 0:30.1,");

    const line = page.locator('[data-panel="power"] .line');
    const whole = await line.getAttribute("d");
    await page.keyboard.press("+");
    expect(await line.getAttribute("d")).not.toBe(whole);
    await page.keyboard.press("0");
    await page.keyboard.press("Escape");
    expect(await pad.getAttribute("aria-valuetext")).toBe("no sample chosen");

    await page.locator("details.table summary").first().focus();
    await page.keyboard.press("Enter");
    expect(await page.locator("details.table").first().getAttribute("open")).not.toBeNull();
    await page.context().close();
  });

  it("shows where the focus is", async () => {
    const { page } = await open(flightReport(sampleInput()));
    await page.locator(".cursor-pad").first().press("Home");
    const outline = await page
      .locator(".cursor-pad")
      .first()
      .evaluate((pad) => getComputedStyle(pad).outlineWidth);
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
    await page.context().close();
  });

  it("links the cursor and the zoom of all panels for pointer and tap", async () => {
    const { page } = await open(flightReport(sampleInput()), { hasTouch: true });
    const pad = page.locator(".cursor-pad").nth(2);
    await pad.tap({ position: { x: 300, y: 50 } });
    const lines = await page
      .locator(".cursor-line")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().left));
    expect(lines).toHaveLength(5);
    expect(Math.max(...lines) - Math.min(...lines)).toBeLessThan(1);
    const box = await pad.boundingBox();
    expect(Math.abs((lines[0] ?? 0) - ((box?.x ?? 0) + 300))).toBeLessThan(2);

    await pad.scrollIntoViewIfNeeded();
    const { x = 0, y = 0, width = 0 } = (await pad.boundingBox()) ?? {};
    await page.mouse.move(x + width * 0.25, y + 60);
    await page.mouse.down();
    await page.mouse.move(x + width * 0.5, y + 60, { steps: 4 });
    await page.mouse.up();
    const ticks = await page
      .locator(".time-axis")
      .evaluateAll((axes) => axes.map((axis) => [...axis.children].map((tick) => tick.textContent).join()));
    expect(new Set(ticks).size).toBe(1);
    expect(ticks[0]).toMatch(/^1:40/);
    await page.getByRole("button", { name: "Whole log" }).click();
    const back = await page.locator(".time-axis").first().textContent();
    expect(back).toMatch(/^0:00/);
    await page.context().close();
  });

  it("reads without scripts: charts, sentences and tables are there, dead controls are not", async () => {
    const { page } = await open(flightReport(sampleInput()), { javaScriptEnabled: false });
    expect(await page.locator(".controls").isVisible()).toBe(false);
    expect(await page.locator('[data-panel="current"] .line').isVisible()).toBe(true);
    expect(await page.getByText("Peak current 78.4").first().isVisible()).toBe(true);
    await page.locator("details.table summary").first().click();
    expect(await page.locator("details.table tbody").first().isVisible()).toBe(true);
    await page.context().close();
  });

  it("names every series in forced colours and moves nothing", async () => {
    const { page } = await open(flightReport(sampleInput({ cellChannels: true, moreTemperatures: true })), {
      forcedColors: "active",
      reducedMotion: "reduce",
    });
    for (const words of ["lowest", "highest", "controller", "motor", "pack", "air"]) {
      expect(await page.locator(".ends text", { hasText: new RegExp(`^${words}$`) }).isVisible()).toBe(true);
    }
    const moving = await page.evaluate(
      () =>
        [...document.querySelectorAll("*")].filter(
          (one) =>
            getComputedStyle(one).transitionDuration !== "0s" ||
            getComputedStyle(one).animationName !== "none",
        ).length,
    );
    expect(moving).toBe(0);
    await page.context().close();
  });

  it("describes each picture by its title and its sentences", async () => {
    const { page } = await open(flightReport(sampleInput()));
    const picture = page.getByRole("img", { name: "Power, W" });
    expect(await picture.count()).toBe(1);
    const id = await picture.getAttribute("aria-describedby");
    expect(await page.locator(`#${id}`).textContent()).toMatch(/^Peak power \d+ ± \d+ W, at 0:58/);
    await page.context().close();
  });

  it("shows attack strings literally in every place, with the policy taken away", async () => {
    const reportOf = (text: string) => withoutPolicy(flightReport(sampleInput({ text, rows: 400 })));
    const { page, problems } = await open(reportOf(LONG_PLAIN));
    const elements = await countElements(page);
    for (let first = 0; first < ATTACK_STRINGS.length; first += STRINGS_AT_ONCE) {
      const attack = ATTACK_STRINGS.slice(first, first + STRINGS_AT_ONCE).join(" ");
      // Padded to one length, so that texts are shortened in the same places and the elements are the same.
      writeFileSync(join(folder, "report.html"), reportOf(` ${attack.padEnd(LONG_PLAIN.length, "x")}`));
      await page.reload();
      await page.locator(".cursor-pad").first().press("Home");
      const ran = await page.evaluate(() => (globalThis as unknown as { __pwn?: number }).__pwn);
      expect(ran, attack).toBeUndefined();
      expect(problems, attack).toEqual([]);
      expect(await countElements(page), attack).toBe(elements);
    }
    await page.context().close();
  });
});

function withoutPolicy(text: string): string {
  return text.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
}

function countElements(page: Page): Promise<number> {
  return page.evaluate(() => document.querySelectorAll("*").length);
}
