import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { seasonReport } from "../../src/show/report/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { sampleSeason } from "../support/sampleSeason.ts";
import { hasBrowser, openBrowser, withBrowser } from "./browser.ts";
import { contrasts } from "./contrast.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const LONG_PLAIN = "x".repeat(100);
const STRINGS_AT_ONCE = 3;

interface Axe {
  readonly run: (
    what: unknown,
    how: unknown,
  ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
}

describe.skipIf(!hasBrowser())(withBrowser("the season report in a browser"), () => {
  let browser: Browser;
  let folder: string;
  const full = seasonReport(sampleSeason({ flights: 15, hasLinks: true }));

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "season-"));
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The page and everything it did that it should not have done. */
  async function open(
    text: string,
    options: BrowserContextOptions = {},
  ): Promise<{ readonly page: Page; readonly problems: string[] }> {
    const file = join(folder, "season.html");
    writeFileSync(file, text);
    const size = { width: 1280, height: 900 };
    const context = await browser.newContext({ offline: true, viewport: size, ...options });
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

  it.each([0, 1, 2, 15, 1000])(
    "opens offline with %i flights: no error, violation or request",
    async (flights) => {
      const { page, problems } = await open(seasonReport(sampleSeason({ flights, hasLinks: true })));
      expect(await page.locator("h1").textContent()).toBe("Tern");
      expect(problems).toEqual([]);
      await page.context().close();
    },
  );

  it.each(["light", "dark"] as const)(
    "has no axe violation in %s at 320, 768 and 1280 px",
    async (colorScheme) => {
      const { page } = await open(full, { colorScheme });
      await page.evaluate(AXE);
      await openAll(page);
      for (const width of [320, 768, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        const found = await page.evaluate(async (tags) => {
          const { axe } = globalThis as unknown as { axe: Axe };
          const { violations } = await axe.run(document, { runOnly: tags });
          return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120))}`);
        }, AXE_TAGS);
        expect(found, `${width} px`).toEqual([]);
      }
      await page.context().close();
    },
  );

  it.each(["light", "dark"] as const)(
    "shows every mark at 3:1 and every text at 4.5:1 in %s",
    async (colorScheme) => {
      const { page } = await open(full, { colorScheme });
      await openAll(page);
      const { marks, texts, smallestPx } = await contrasts(page);
      expect(marks.length).toBeGreaterThan(200);
      expect(marks.filter(({ ratio }) => ratio < 3)).toEqual([]);
      expect(texts.length).toBeGreaterThan(500);
      expect(texts.filter(({ ratio }) => ratio < 4.5)).toEqual([]);
      expect(smallestPx).toBeGreaterThanOrEqual(12);
      await page.context().close();
    },
  );

  it("sees a point that is too faint (the contrast test can fail)", async () => {
    const { page } = await open(full, { bypassCSP: true });
    await page.addStyleTag({ content: ":root { --two: #f5e663 }" });
    const { marks } = await contrasts(page);
    expect(marks.some(({ ratio }) => ratio < 3)).toBe(true);
    await page.context().close();
  });

  it.each([320, 768, 1280])("never scrolls sideways at %i px, also with wide text spacing", async (width) => {
    const long = seasonReport(sampleSeason({ flights: 15, hasLinks: true, text: "x".repeat(300) }));
    const { page } = await open(long, { viewport: { width, height: 800 }, bypassCSP: true });
    await openAll(page);
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

  it.each([320, 1280])("gives every target at least 24 px each way at %i px", async (width) => {
    const { page } = await open(full, { viewport: { width, height: 800 } });
    const small = await page.evaluate(() =>
      [...document.querySelectorAll("button, summary, a")]
        .map((element) => ({ box: element.getBoundingClientRect(), html: element.outerHTML.slice(0, 80) }))
        .filter(({ box }) => box.width < 24 || box.height < 24)
        .map(({ html }) => html),
    );
    expect(small).toEqual([]);
    await page.context().close();
  });

  it("draws a stack on one flight axis, and no date of an axis over another", async () => {
    for (const width of [320, 768, 1280]) {
      const { page } = await open(full, { viewport: { width, height: 900 } });
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
      await page.context().close();
    }
  });

  it("describes each picture by its title and its sentences", async () => {
    const { page } = await open(full);
    const picture = page.getByRole("img", { name: "Controller peak, °C" });
    expect(await picture.count()).toBe(1);
    const id = await picture.getAttribute("aria-describedby");
    expect(await page.locator(`#${id}`).textContent()).toMatch(
      /^Controller peak from [\d.]+ °C to [\d.]+ °C/,
    );
    await page.context().close();
  });

  it("is read by keyboard alone: every table and every flight's own report, in reading order", async () => {
    const { page } = await open(full);
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
    await page.context().close();
  });

  it("keeps 1,000 flights within reach of the keyboard: groups that open by key", async () => {
    const { page } = await open(seasonReport(sampleSeason({ flights: 1000, hasLinks: true })));
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
    await page.context().close();
  });

  it("opens a flight's own report from its row", async () => {
    const { page, problems } = await open(full);
    const link = page.getByRole("link").first();
    const href = (await link.getAttribute("href")) ?? "";
    expect(href).toBe("season-flights/flight-15.html");
    const target = new URL(href, page.url()).href;
    expect(target.startsWith(pathToFileURL(folder).href)).toBe(true);
    expect(problems).toEqual([]);
    await page.context().close();
  });

  it.each(["A4", "Letter"])("prints on %s with headline and timer on the first page", async (format) => {
    const { page } = await open(full);
    const pages = async () => {
      const pdf = await page.pdf({ format, printBackground: false });
      return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length;
    };
    expect(await pages()).toBeLessThanOrEqual(16);
    // What follows the timer is taken away, so that the count of pages is the timer's last page.
    await page.evaluate(() => {
      const timer = document.querySelector("section.timer");
      while (timer?.nextElementSibling) timer.nextElementSibling.remove();
      document.querySelector("footer")?.remove();
    });
    expect(await page.locator(".headline").count()).toBe(1);
    expect(await pages()).toBe(1);
    await page.context().close();
  });

  it("prints no chart cut and every table open", async () => {
    const { page } = await open(full);
    await page.emulateMedia({ media: "print" });
    const seen = await page.evaluate(() => ({
      cuts: [...document.querySelectorAll(".panel")].map((panel) => getComputedStyle(panel).breakInside),
      heights: [...document.querySelectorAll("details.table table")].map(
        (table) => table.getBoundingClientRect().height,
      ),
    }));
    expect(new Set(seen.cuts)).toEqual(new Set(["avoid"]));
    expect(Math.min(...seen.heights)).toBeGreaterThan(50);
    await page.context().close();
  });

  it("keeps series and lines apart by shape and words in forced colours, and moves nothing", async () => {
    const { page } = await open(full, { forcedColors: "active", reducedMotion: "reduce" });
    const ends = page.locator('[data-panel="trend-1"] .ends .end');
    expect(await ends.count()).toBe(2);
    expect(await ends.allTextContents()).toEqual(["pack A", "pack B"]);
    const shapes = await page
      .locator('[data-panel="trend-1"] .points')
      .evaluateAll((all) => all.map((one) => one.querySelector("circle, path")?.tagName));
    expect(new Set(shapes).size).toBe(2);
    await page.context().close();
  });

  it("shows attack strings literally in every place, with the policy taken away", async () => {
    const reportOf = (text: string) =>
      seasonReport(sampleSeason({ flights: 6, text, hasLinks: true })).replace(
        /<meta http-equiv="Content-Security-Policy"[^>]*>/,
        "",
      );
    const { page, problems } = await open(reportOf(LONG_PLAIN));
    const count = () => page.evaluate(() => document.querySelectorAll("*").length);
    const elements = await count();
    for (let first = 0; first < ATTACK_STRINGS.length; first += STRINGS_AT_ONCE) {
      const attack = ATTACK_STRINGS.slice(first, first + STRINGS_AT_ONCE).join(" ");
      // Padded to one length, so that texts are shortened in the same places and the elements are the same.
      writeFileSync(join(folder, "season.html"), reportOf(` ${attack.padEnd(LONG_PLAIN.length, "x")}`));
      await page.reload();
      const ran = await page.evaluate(() => (globalThis as unknown as { __pwn?: number }).__pwn);
      expect(ran, attack).toBeUndefined();
      expect(problems, attack).toEqual([]);
      expect(await count(), attack).toBe(elements);
    }
    await page.context().close();
  });
});

function openAll(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
}

/** Names of what the Tab key reaches, in order. */
async function tabbed(page: Page, most: number): Promise<readonly string[]> {
  const seen: string[] = [];
  for (let step = 0; step < most; step++) {
    await page.keyboard.press("Tab");
    const name = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === document.body) return "";
      return element?.getAttribute("aria-label") ?? element?.textContent ?? "";
    });
    if (name === "") break;
    seen.push(name);
  }
  return seen;
}
