import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type FlightReportInput, flightReport } from "../../src/show/report/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { sampleInput, sampleInputOfTwo, sampleQuestion } from "../support/sampleCheck.ts";
import { axeProblems } from "./axe.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { contrasts } from "./contrast.ts";
import {
  addStyle,
  countElements,
  Desk,
  overflowPx,
  pdfPages,
  smallTargets,
  TEXT_SPACING,
  tabbed,
  withoutPolicy,
} from "./desk.ts";

const LONG_PLAIN = "x".repeat(100);
const STRINGS_AT_ONCE = 3;

describe.skipIf(!hasBrowser())(withBrowser("the report in a browser"), () => {
  let desk: Desk;
  const plain = flightReport(sampleInput());
  const full = flightReport(sampleInput({ cellChannels: true, moreTemperatures: true }));

  beforeAll(async () => {
    desk = await Desk.open("report");
  });

  afterAll(() => desk?.close());

  const INPUTS: readonly (readonly [string, FlightReportInput])[] = [
    ["a flight", sampleInput()],
    ["a bench run", sampleInput({ kind: "benchRun" })],
    ["two flights", sampleInputOfTwo()],
    ["a question", sampleQuestion()],
    ["a full flight", sampleInput({ cellChannels: true, moreTemperatures: true })],
  ];

  it.each(INPUTS)("%s opens from disk offline: no error, no violation, no request", async (_name, input) => {
    const { page, problems } = await desk.show(flightReport(input), { changes: true });
    const pads = page.locator(".cursor-pad");
    if ((await pads.count()) > 0) {
      await pads.first().hover({ position: { x: 100, y: 40 } });
      await page.locator("[data-act=in]").first().click();
    }
    expect(problems).toEqual([]);
  });

  it("has no axe violation at 320, 768 and 1280 px, in light and in dark", async () => {
    const { page } = await desk.show(full);
    await page.locator(".cursor-pad").first().press("Home");
    expect(await axeProblems(page)).toEqual([]);
  });

  it("shows every mark at 3:1 and every text at 4.5:1 in light and in dark", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page } = await desk.show(full, { colorScheme });
      const { marks, texts, smallestPx } = await contrasts(page);
      expect(marks.length).toBeGreaterThan(200);
      expect(marks.filter(({ ratio }) => ratio < 3)).toEqual([]);
      expect(texts.length).toBeGreaterThan(500);
      expect(texts.filter(({ ratio }) => ratio < 4.5)).toEqual([]);
      expect(smallestPx).toBeGreaterThanOrEqual(12);
    }
  });

  it("names every series in forced colours and moves nothing", async () => {
    const { page } = await desk.show(full, { forcedColors: "active" });
    for (const words of ["lowest", "highest", "controller", "motor", "pack", "air"]) {
      const label = page.locator(".stack .ends text", { hasText: new RegExp(`^${words}$`) });
      expect(await label.isVisible()).toBe(true);
    }
    for (const words of ["motor", "propeller", "measured", "modelled", "hot day", "after 10 s"]) {
      const label = page.locator(".part .ends text", { hasText: new RegExp(`^${words}$`) });
      expect(await label.isVisible()).toBe(true);
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
  });

  it("sees a mark that is too faint (the contrast test can fail)", async () => {
    const { page } = await desk.show(full, { changes: true });
    await addStyle(page, ":root { --two: #f5e663 }");
    const { marks } = await contrasts(page);
    expect(marks.some(({ ratio }) => ratio < 3)).toBe(true);
  });

  it("never scrolls sideways at 320, 768 or 1280 px, also with wide text spacing", async () => {
    const long = flightReport(sampleInput({ text: "x".repeat(300) }));
    const widths = [320, 768, 1280];
    for (const width of widths) {
      const { page } = await desk.show(long, { width });
      expect(await overflowPx(page), `${width} px`).toBeLessThanOrEqual(0);
    }
    const { page } = await desk.show(long, { changes: true });
    await addStyle(page, TEXT_SPACING);
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 });
      expect(await overflowPx(page), `${width} px, spaced`).toBeLessThanOrEqual(0);
    }
  });

  it("gives every target at least 24 px each way", async () => {
    for (const width of [320, 1280]) {
      const { page } = await desk.show(plain, { width });
      expect(await smallTargets(page)).toEqual([]);
    }
  });

  it("draws all panels of a flight on one time axis", async () => {
    const { page } = await desk.show(plain);
    const edges = await page.evaluate(() =>
      [...document.querySelectorAll(".stack svg.plot")].map((plot) => {
        const { left, right } = plot.getBoundingClientRect();
        return [left, right];
      }),
    );
    expect(edges).toHaveLength(5);
    expect(new Set(edges.map((edge) => edge.join())).size).toBe(1);
  });

  it.each([320, 768, 1280])(
    "keeps every label of the parts' pictures whole and off the others at %i px",
    async (width) => {
      const { page } = await desk.show(plain, { width });
      const seen = await page.evaluate(() => {
        const isShown = (one: Element) => getComputedStyle(one).display !== "none";
        return [...document.querySelectorAll(".plane-panel")].flatMap((figure) => {
          const plot = figure.querySelector("svg.plot")?.getBoundingClientRect();
          const texts = [...figure.querySelectorAll("svg text")].filter(isShown).map((text) => ({
            words: text.textContent ?? "",
            box: text.getBoundingClientRect(),
            isInPlot: text.closest("svg.plot") !== null,
          }));
          const cut = texts.filter(
            ({ box, isInPlot }) =>
              box.right > innerWidth ||
              (isInPlot && plot !== undefined && (box.left < plot.left - 1 || box.right > plot.right + 1)),
          );
          const clashes = texts.flatMap((one, at) =>
            texts.slice(at + 1).filter(({ box }) => {
              const isApart = one.box.right <= box.left || box.right <= one.box.left;
              const isOtherLine = one.box.bottom - 3 <= box.top || box.bottom - 3 <= one.box.top;
              return !isApart && !isOtherLine;
            }),
          );
          return [...cut, ...clashes].map(({ words }) => words);
        });
      });
      expect(seen).toEqual([]);
    },
  );

  it("leaves the hole open: no line crosses it", async () => {
    const { page } = await desk.show(plain);
    const crossings = await page.evaluate(() =>
      [...document.querySelectorAll(".stack .panel")].flatMap((panel) => {
        const hole = panel.querySelector(".gap")?.getBoundingClientRect();
        const path = panel.querySelector(".line");
        const plot = panel.querySelector("svg.plot")?.getBoundingClientRect();
        if (!hole || !path || !plot) return ["nothing drawn"];
        const xs: number[] = [];
        for (const piece of (path.getAttribute("d") ?? "").split("M").slice(1)) {
          let x = 0;
          for (const [index, step] of [...piece.matchAll(/(-?\d+),-?\d+/g)].entries()) {
            x = index === 0 ? Number(step[1]) : x + Number(step[1]);
            xs.push(plot.left + (x / 8000) * plot.width);
          }
        }
        if (xs.length < 100) return ["no line"];
        return xs.filter((x) => x > hole.left + 1 && x < hole.right - 1).map(String);
      }),
    );
    expect(crossings).toEqual([]);
    const pieces = await page.locator('[data-panel="power"] .line').getAttribute("d");
    expect(pieces?.match(/M/g)).toHaveLength(2);
  });

  it("prints on A4 and Letter with headline, budget and charts on the first two pages", async () => {
    const { page } = await desk.show(plain, { changes: true });
    for (const format of ["A4", "Letter"]) expect(await pdfPages(page, format)).toBeLessThanOrEqual(12);
    // What follows the charts is taken away, so that the count of pages is the charts' last page.
    await page.evaluate(() => {
      for (const table of document.querySelectorAll("details.table")) table.remove();
      for (const end of [document.querySelector(".stack"), document.querySelector(".flight")]) {
        while (end?.nextElementSibling) end.nextElementSibling.remove();
      }
      document.querySelector("footer")?.remove();
    });
    expect(await page.locator(".panel").count()).toBe(5);
    for (const format of ["A4", "Letter"]) expect(await pdfPages(page, format)).toBe(2);
  });

  it("prints no chart cut and every table open, after the charts", async () => {
    const { page } = await desk.show(plain, { media: "print" });
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
    expect(Math.min(...seen.heights)).toBeGreaterThan(50);
  });

  it("is read by keyboard alone: cursor, zoom, every value, tables", async () => {
    const { page } = await desk.show(plain, { changes: true });
    const seen = await tabbed(page, 60);
    expect(seen).toEqual(
      expect.arrayContaining([
        "Zoom in",
        "Cursor in Power",
        "Power as a table",
        "Cursor in Current",
        "Cursor in Volts per cell",
        "Cursor in Shaft speed",
        "Cursor in Controller temperature",
        "Pack volts against current as a table",
        "Current against shaft speed at full throttle as a table",
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
  });

  it("shows where the focus is", async () => {
    const { page } = await desk.show(plain, { changes: true });
    await page.locator(".cursor-pad").first().press("Home");
    const outline = await page
      .locator(".cursor-pad")
      .first()
      .evaluate((pad) => getComputedStyle(pad).outlineWidth);
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
  });

  it("links the cursor and the zoom of all panels for pointer and tap", async () => {
    const { page } = await desk.show(plain, { changes: true });
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
  });

  it("reads without scripts: charts, sentences and tables are there, dead controls are not", async () => {
    const { page } = await desk.fresh(plain, { javaScriptEnabled: false });
    expect(await page.locator(".controls").isVisible()).toBe(false);
    expect(await page.locator('[data-panel="current"] .line').isVisible()).toBe(true);
    expect(await page.getByText("Peak current 78.4").first().isVisible()).toBe(true);
    await page.locator("details.table summary").first().click();
    expect(await page.locator("details.table tbody").first().isVisible()).toBe(true);
    await page.context().close();
  });

  it("describes each picture by its title and its sentences", async () => {
    const { page } = await desk.show(plain);
    const picture = page.getByRole("img", { name: "Power, W" });
    expect(await picture.count()).toBe(1);
    const id = await picture.getAttribute("aria-describedby");
    expect(await page.locator(`#${id}`).textContent()).toMatch(/^Peak power \d+ ± \d+ W, at 0:58/);
  });

  it("shows attack strings literally in every place, with the policy taken away", async () => {
    const reportOf = (text: string) => withoutPolicy(flightReport(sampleInput({ text, rows: 400 })));
    const { page, problems } = await desk.show(reportOf(LONG_PLAIN));
    const elements = await countElements(page);
    for (let first = 0; first < ATTACK_STRINGS.length; first += STRINGS_AT_ONCE) {
      const attack = ATTACK_STRINGS.slice(first, first + STRINGS_AT_ONCE).join(" ");
      // Padded to one length, so that texts are shortened in the same places and the elements are the same.
      await desk.show(reportOf(` ${attack.padEnd(LONG_PLAIN.length, "x")}`));
      await page.locator(".cursor-pad").first().press("Home");
      const ran = await page.evaluate(() => (globalThis as unknown as { __pwn?: number }).__pwn);
      expect(ran, attack).toBeUndefined();
      expect(problems, attack).toEqual([]);
      expect(await countElements(page), attack).toBe(elements);
    }
  });
});
