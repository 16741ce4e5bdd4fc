import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import { parseAircraftFile } from "../../src/aircraft/index.ts";
import { checkLog } from "../../src/flight/check/index.ts";
import { NO_READING_OPTIONS } from "../../src/log/reading/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { hasBrowser, openBrowser, withBrowser } from "./browser.ts";
import { openPage } from "./pageCore.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const TERN = resolve(import.meta.dirname, "../../fixtures/tern");
const LOG = join(TERN, "flight-01.csv");

/** A log whose header names nothing: the page must ask. */
const UNNAMED = `a,b,c\n${Array.from({ length: 600 }, (_, row) => `${row / 5},${33 - row / 400},${20 + (row % 7)}`).join("\n")}\n`;

const ASKING = { name: "one.csv", mimeType: "text/csv", buffer: Buffer.from(UNNAMED) };
const NO_LOG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 255, 254]);

describe.skipIf(!hasBrowser())(withBrowser("the page from disk, offline"), () => {
  let browser: Browser;
  let folder: string;
  let address: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "page-"));
    const text = (await pageText()) as string;
    expect(text.length).toBeLessThan(700_000);
    writeFileSync(join(folder, "page.html"), text);
    address = pathToFileURL(join(folder, "page.html")).href;
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(options: BrowserContextOptions = {}): Promise<{ page: Page; problems: string[] }> {
    const context = await browser.newContext({ offline: true, ...options });
    return openPage(context, address);
  }

  /** In the dark only contrast can differ; reports have tests of their own and count in the light once. */
  async function axeFindings(page: Page, isWhole: boolean): Promise<readonly string[]> {
    await page.evaluate(AXE);
    return page.evaluate(
      async (run) => {
        type Found = { violations: { id: string; nodes: { html: string }[] }[] };
        const { axe } = globalThis as unknown as {
          axe: { run(what: unknown, how: unknown): Promise<Found> };
        };
        const { violations } = await axe.run(
          run.length > 1 ? document : { exclude: [["#report"], ["#book-report"]] },
          { runOnly: run },
        );
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
      },
      isWhole ? AXE_TAGS : ["color-contrast"],
    );
  }

  it("starts its worker and shows the numbers of the check to the last digit", async () => {
    const { page, problems } = await open();
    await page.locator("#aircraft-input").setInputFiles(join(TERN, "aircraft.json"));
    await page.getByText("limits of Tern").first().waitFor();
    await page.locator("#logs-input").setInputFiles(LOG);
    await page.locator("#report .flight").first().waitFor();
    expect(await page.locator("#slow").isHidden()).toBe(true);
    const aircraft = parseAircraftFile(readFileSync(join(TERN, "aircraft.json"), "utf8"), "aircraft.json");
    if (aircraft.state !== "read") throw new Error("the demo aircraft is not read");
    const { check } = checkLog(readFileSync(LOG), {
      file: "flight-01.csv",
      sha256: "",
      aircraft: aircraft.facts.name,
      facts: aircraft.facts,
      budget: aircraft.budget,
      readings: aircraft.readings,
      options: NO_READING_OPTIONS,
      day: { ambientC: null, startPct: null },
    });
    const known = Object.entries(check.flights[0]?.measures ?? {}).filter(([, { value }]) => value !== null);
    const shown = await page
      .locator("[data-value]")
      .evaluateAll((cells) =>
        cells.map((cell) => [cell.getAttribute("data-measure"), cell.getAttribute("data-value")]),
      );
    expect(known.length).toBeGreaterThan(10);
    const values = new Map((shown as [string, string][]).map(([name, text]) => [name, Number(text)]));
    // The sections on the parts carry numbers of their own beside the measures.
    expect([...values.keys()]).toEqual(expect.arrayContaining(known.map(([name]) => name)));
    // Two engines' Math.exp differ in the last bit and the fits amplify it: sums agree exactly, fits to 1e-9.
    for (const [name, { value }] of known) {
      const shownValue = values.get(name) ?? Number.NaN;
      const isFitted = /Resistance|TimeConstant|Rise|HotDay|PowerCoefficient|Efficiency/.test(name);
      if (isFitted) expect(Math.abs(shownValue / (value ?? 0) - 1), name).toBeLessThan(1e-9);
      else expect(shownValue, name).toBe(value);
    }
    await page.locator("[data-act=in]").first().click();
    expect(problems).toEqual([]);
    await page.context().close();
  });

  it("asks in place by keyboard, remembers the answer for the next log of that header", async () => {
    const { page, problems } = await open({ viewport: { width: 320, height: 700 } });
    await page.locator("#logs-input").setInputFiles(ASKING);
    await page.getByText("needs an answer").first().waitFor();
    for (const [column, channel] of [
      [1, "time"],
      [2, "packVoltage"],
      [3, "current"],
    ] as const)
      await page.locator(`select[aria-label^="Column ${column},"]`).selectOption(channel);
    await page.getByText("Read again with these columns").press("Enter");
    await page
      .locator("#logs li", { hasText: /flight|unit|answer/ })
      .first()
      .waitFor();
    const seconds = page.getByRole("button", { name: "The time is in s", exact: true });
    await seconds.or(page.locator("#report .flight")).first().waitFor();
    if (await seconds.isVisible()) await seconds.press("Enter");
    await page.locator("#report .flight").first().waitFor();
    await page.locator("#logs-input").setInputFiles({ ...ASKING, name: "two.csv" });
    await page.getByText("read as you answered before").first().waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(320);
    expect(problems).toEqual([]);
    await page.context().close();
  });

  it("has no axe violation in any state, light and dark", async () => {
    const { page } = await open();
    const both = async (state: string) => {
      for (const colorScheme of ["light", "dark"] as const) {
        // Without motion: a colour half way through its change is nobody's state.
        await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
        expect(await axeFindings(page, colorScheme === "light"), `${state}, ${colorScheme}`).toEqual([]);
      }
    };
    await both("empty");
    await page.locator("#logs-input").setInputFiles(ASKING);
    await page.locator(".asks").waitFor();
    await both("asking");
    await page.locator("#logs-input").setInputFiles({ ...ASKING, name: "photo.csv", buffer: NO_LOG });
    await page.locator("#report .notice").first().waitFor();
    await both("refused");
    await page.locator("#go-aircraft").click();
    await both("no aircraft");
    await page.locator("#aircraft-input").setInputFiles(join(TERN, "aircraft.json"));
    await page.locator("#plan .headline").waitFor();
    await page.locator('[data-key="controller.limitC"]').fill("999");
    await page.locator(".wrong:not([hidden])").waitFor();
    await both("aircraft with a wrong value");
    await page.locator("#go-swap").click();
    await page.locator("#swap-view .headline").waitFor();
    await both("what if");
    await page.locator("#go-log").click();
    await page.locator("#logs-input").setInputFiles(LOG);
    await page.locator("#report .foot").waitFor();
    await page.locator("#keep summary").click();
    await both("full");
    await page.getByRole("button", { name: "Keep this log" }).click();
    await page.locator(".kept").waitFor();
    await page.locator("#go-logbook").click();
    await page.locator(".book-flights li").waitFor();
    await page.getByRole("button", { name: /^Facts of/ }).click();
    await both("flights of the logbook");
    for (const view of ["Timer", "Trends", "Season report"]) {
      await page.getByRole("button", { name: view, exact: true }).click();
      await page.locator("#book-view h2, #book-report .foot").first().waitFor();
      await both(view);
    }
    await page.context().close();
  });

  it("shows attack strings as text, even without its policy", async () => {
    const { page } = await open({ bypassCSP: true });
    const files = ATTACK_STRINGS.map((attack, at) => {
      const quoted = `"${attack.replaceAll('"', '""')}"`;
      const text = `${quoted},b,c\n${quoted},1,2\n1,2,3\n`;
      return { name: `${attack}${at}.csv`, mimeType: "text/csv", buffer: Buffer.from(text) };
    });
    await page.locator("#logs-input").setInputFiles(files);
    await page
      .locator("#logs li")
      .nth(files.length - 1)
      .waitFor();
    await page.waitForFunction(
      () => !/waiting|being read/.test(document.getElementById("logs")?.textContent ?? ""),
    );
    for (const show of await page.locator("#logs button").all()) await show.click();
    expect(await page.evaluate(() => "__pwn" in globalThis)).toBe(false);
    expect(page.url()).toBe(address);
    expect(await page.locator("#logs button").first().textContent()).toBe(files[0]?.name);
    await page.context().close();
  });
});
