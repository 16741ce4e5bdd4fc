import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { seasonReport } from "../../src/show/report/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { sampleSeason } from "../support/sampleSeason.ts";
import { axeProblems } from "./axe.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { contrasts } from "./contrast.ts";
import {
  addStyle,
  countElements,
  Desk,
  openDetails,
  overflowPx,
  pdfPages,
  smallTargets,
  TEXT_SPACING,
  tabbed,
  withoutPolicy,
} from "./desk.ts";

const LONG_PLAIN = "x".repeat(100);
const STRINGS_AT_ONCE = 3;

describe.skipIf(!hasBrowser())(withBrowser("the season report in a browser"), () => {
  let desk: Desk;
  const full = seasonReport(sampleSeason({ flights: 15, hasLinks: true }));

  beforeAll(async () => {
    desk = await Desk.open("season");
  });

  afterAll(() => desk?.close());

  it.each([0, 1, 2, 15])("opens offline with %i flights: no error, violation or request", async (flights) => {
    const { page, problems } = await desk.show(seasonReport(sampleSeason({ flights, hasLinks: true })));
    expect(await page.locator("h1").textContent()).toBe("Tern");
    expect(problems).toEqual([]);
  });

  it("opens a flight's own report from its row", async () => {
    const { page, problems } = await desk.show(full);
    const link = page.getByRole("link").first();
    const href = (await link.getAttribute("href")) ?? "";
    expect(href).toBe("season-flights/flight-15.html");
    const target = new URL(href, page.url()).href;
    expect(target.startsWith(pathToFileURL(desk.folder).href)).toBe(true);
    expect(problems).toEqual([]);
  });

  it("draws a stack on one flight axis, and no date of an axis over another", async () => {
    for (const width of [320, 768, 1280]) {
      const { page } = await desk.show(full, { width });
      const seen = await page.evaluate(() => {
        const boxOf = (one: Element) => one.getBoundingClientRect();
        const edges = [...document.querySelectorAll("#heat ~ figure svg.plot")].map((plot) => {
          const { left, right } = boxOf(plot);
          return `${left} ${right}`;
        });
        const clashes = [...document.querySelectorAll(".flight-axis, .break-names")].flatMap((axis) => {
          const words = [...axis.querySelectorAll("text")]
            .filter((text) => getComputedStyle(text).display !== "none")
            .map((text) => ({ text: text.textContent ?? "", box: boxOf(text) }));
          return words.flatMap((one, at) =>
            words.slice(at + 1).flatMap((other) => {
              const isApart = one.box.right <= other.box.left || other.box.right <= one.box.left;
              const isOtherLine = Math.abs(one.box.top - other.box.top) > 8;
              return isApart || isOtherLine ? [] : [`${one.text} over ${other.text}`];
            }),
          );
        });
        return { edges, clashes };
      });
      expect(seen.edges).toHaveLength(3);
      expect(new Set(seen.edges).size).toBe(1);
      expect(seen.clashes, `${width} px`).toEqual([]);
    }
  });

  it.each([320, 1280])("gives every target at least 24 px each way at %i px", async (width) => {
    const { page } = await desk.show(full, { width });
    expect(await smallTargets(page)).toEqual([]);
  });

  it("keeps series and lines apart by shape and words in forced colours, and moves nothing", async () => {
    const { page } = await desk.show(full, { forcedColors: "active" });
    const ends = page.locator('[data-panel="trend-1"] .ends .end');
    expect(await ends.count()).toBe(2);
    expect(await ends.allTextContents()).toEqual(["pack A", "pack B"]);
    const shapes = await page
      .locator('[data-panel="trend-1"] .points')
      .evaluateAll((all) => all.map((one) => one.querySelector("circle, path")?.tagName));
    expect(new Set(shapes).size).toBe(2);
  });

  it("describes each picture by its title and its sentences", async () => {
    const { page } = await desk.show(full);
    const picture = page.getByRole("img", { name: "Controller peak, °C" });
    expect(await picture.count()).toBe(1);
    const id = await picture.getAttribute("aria-describedby");
    expect(await page.locator(`#${id}`).textContent()).toMatch(
      /^Controller peak from [\d.]+ °C to [\d.]+ °C/,
    );
  });

  it("is read by keyboard alone: every table and every flight's own report, in reading order", async () => {
    const { page } = await desk.show(full, { changes: true });
    const seen = await tabbed(page, 80);
    const places = [
      "Pack resistance as a table",
      "Charge rate in flight as a table",
      "Flight by flight, table",
    ];
    for (const name of places) expect(seen).toContain(name);
    expect(seen.filter((name) => /^2026-\d\d-\d\d-\d+$/.test(name))).toHaveLength(15);
    expect(places.map((name) => seen.indexOf(name))).toEqual(
      places.map((name) => seen.indexOf(name)).sort((one, other) => one - other),
    );
    const summary = page.locator("details.table summary").first();
    await summary.focus();
    await page.keyboard.press("Enter");
    expect(await page.locator("details.table").first().getAttribute("open")).not.toBeNull();
    const outline = await summary.evaluate((one) => getComputedStyle(one).outlineWidth);
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
  });

  it("opens offline with 1,000 flights and keeps them within reach of the keyboard: groups that open by key", async () => {
    const thousand = seasonReport(sampleSeason({ flights: 1000, hasLinks: true }));
    const { page, problems } = await desk.show(thousand, { changes: true });
    expect(problems).toEqual([]);
    const groups = page.locator("details.flights");
    expect(await groups.count()).toBe(10);
    expect(await page.locator("details.flights[open]").count()).toBe(1);
    const second = groups.nth(1);
    expect(await second.locator("a").first().isVisible()).toBe(false);
    await second.locator("summary").focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    const focused = await page.evaluate(() => document.activeElement?.getAttribute("href"));
    expect(focused).toBe("season-flights/flight-900.html");
  });

  it("has no axe violation with everything open, at 320, 768 and 1280 px, in light and in dark", async () => {
    const { page } = await desk.show(full, { changes: true });
    await openDetails(page);
    expect(await axeProblems(page)).toEqual([]);
  });

  it("shows every mark at 3:1 and every text at 4.5:1 in light and in dark", async () => {
    const { page } = await desk.show(full, { changes: true });
    await openDetails(page);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      const { marks, texts, smallestPx } = await contrasts(page);
      expect(marks.length).toBeGreaterThan(200);
      expect(marks.filter(({ ratio }) => ratio < 3)).toEqual([]);
      expect(texts.length).toBeGreaterThan(500);
      expect(texts.filter(({ ratio }) => ratio < 4.5)).toEqual([]);
      expect(smallestPx).toBeGreaterThanOrEqual(12);
    }
    await addStyle(page, ":root { --two: #f5e663 }");
    await page.emulateMedia({ colorScheme: "light" });
    const { marks } = await contrasts(page);
    expect(
      marks.some(({ ratio }) => ratio < 3),
      "a point that is too faint is seen",
    ).toBe(true);
  });

  it("never scrolls sideways at 320, 768 or 1280 px, also with wide text spacing", async () => {
    const long = seasonReport(sampleSeason({ flights: 15, hasLinks: true, text: "x".repeat(300) }));
    const { page } = await desk.show(long, { changes: true });
    await openDetails(page);
    const widths = [320, 768, 1280];
    const overflows = async () => {
      const found: number[] = [];
      for (const width of widths) {
        await page.setViewportSize({ width, height: 900 });
        found.push(await overflowPx(page));
      }
      return found;
    };
    expect(Math.max(...(await overflows()))).toBeLessThanOrEqual(0);
    await addStyle(page, TEXT_SPACING);
    expect(Math.max(...(await overflows()))).toBeLessThanOrEqual(0);
  });

  it("prints on A4 and Letter with headline and timer on the first page", async () => {
    const { page } = await desk.show(full, { changes: true });
    for (const format of ["A4", "Letter"]) expect(await pdfPages(page, format)).toBeLessThanOrEqual(16);
    // What follows the timer is taken away, so that the count of pages is the timer's last page.
    await page.evaluate(() => {
      const timer = document.querySelector("section.timer");
      while (timer?.nextElementSibling) timer.nextElementSibling.remove();
      document.querySelector("footer")?.remove();
    });
    expect(await page.locator(".headline").count()).toBe(1);
    for (const format of ["A4", "Letter"]) expect(await pdfPages(page, format)).toBe(1);
  });

  it("prints no chart cut and every table open", async () => {
    const { page } = await desk.show(full, { media: "print" });
    const seen = await page.evaluate(() => ({
      cuts: [...document.querySelectorAll(".panel")].map((panel) => getComputedStyle(panel).breakInside),
      heights: [...document.querySelectorAll("details.table table")].map(
        (table) => table.getBoundingClientRect().height,
      ),
    }));
    expect(new Set(seen.cuts)).toEqual(new Set(["avoid"]));
    expect(Math.min(...seen.heights)).toBeGreaterThan(50);
  });

  it("shows attack strings literally in every place, with the policy taken away", async () => {
    const reportOf = (text: string) =>
      withoutPolicy(seasonReport(sampleSeason({ flights: 6, text, hasLinks: true })));
    const { page, problems } = await desk.show(reportOf(LONG_PLAIN));
    const elements = await countElements(page);
    for (let first = 0; first < ATTACK_STRINGS.length; first += STRINGS_AT_ONCE) {
      const attack = ATTACK_STRINGS.slice(first, first + STRINGS_AT_ONCE).join(" ");
      // Padded to one length, so that texts are shortened in the same places and the elements are the same.
      await desk.show(reportOf(` ${attack.padEnd(LONG_PLAIN.length, "x")}`));
      const ran = await page.evaluate(() => (globalThis as unknown as { __pwn?: number }).__pwn);
      expect(ran, attack).toBeUndefined();
      expect(problems, attack).toEqual([]);
      expect(await countElements(page), attack).toBe(elements);
    }
  });
});
