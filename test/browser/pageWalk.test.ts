import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import type { SwapResult } from "../../src/flight/judgement/index.ts";
import type { TimerResult } from "../../src/season/timer/index.ts";
import type { TrendResult } from "../../src/season/trends/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { LOG_STYLES, simulateFlight, TERN, usualSpec, writeLog } from "../generator/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { hasBrowser, openBrowser, withBrowser } from "./browser.ts";
import { ask, openPage } from "./pageCore.ts";

const FIXTURES = resolve(import.meta.dirname, "../../fixtures/tern");
const AIRCRAFT = join(FIXTURES, "aircraft.json");
/** Flights on two propellers, enough for a timer and trends. */
const SEASON = ["bench-run", "flight-01", "flight-02", "flight-03", "flight-09", "flight-10"].map(
  (name) => `${name}.csv`,
);
/** Two engines' Math.exp differ in the last bit, and fits amplify it. */
const SAME = 1e-9;

describe.skipIf(!hasBrowser())(withBrowser("a walk through the page"), () => {
  let browser: Browser;
  let folder: string;
  let address: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "page-walk-"));
    writeFileSync(join(folder, "page.html"), (await pageText()) as string);
    address = pathToFileURL(join(folder, "page.html")).href;
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("reads every header style, without a network", async () => {
    const context = await browser.newContext({ offline: true });
    const { page, problems } = await openPage(context, address);
    const { logged } = simulateFlight(
      usualSpec(5, TERN, { script: { flightS: 60 }, sensors: { rateHz: 5 } }),
    );
    const styles = Object.entries(LOG_STYLES);
    const files = styles.map(([name, style]) => ({
      name: `${name}.csv`,
      mimeType: "text/csv",
      buffer: Buffer.from(writeLog(logged, style)),
    }));
    await page.locator("#logs-input").setInputFiles(files);
    await page.waitForFunction(() => document.querySelector("#logs [data-state=busy]") === null);
    const states = await page.locator("#logs .state").allTextContents();
    expect(states).toEqual(styles.map(() => "1 flight"));
    expect(problems).toEqual([]);
    await context.close();
  });

  it("keeps a season and says the same as the command line, also after it was closed", async () => {
    const machine = new BookMachine({ "tern.json": readFileSync(AIRCRAFT, "utf8") });
    for (const name of SEASON) machine.files[name] = readFileSync(join(FIXTURES, name), "utf8");
    for (const name of SEASON) await machine.ok(`add ${name} --aircraft tern.json --ambient 20`);

    const context = await browser.newContext({ offline: true });
    const { page, problems } = await openPage(context, address);
    await page.locator("#aircraft-input").setInputFiles(AIRCRAFT);
    await page.getByText("limits of Tern").first().waitFor();
    await page.locator("#logs-input").setInputFiles(SEASON.map((name) => join(FIXTURES, name)));
    await page.waitForFunction(() => document.querySelector("#logs [data-state=busy]") === null);
    await page.locator("#keep summary").click();
    await page.locator("#keep [name=ambientC]").fill("20");
    await page.getByRole("button", { name: /^Keep all/ }).click();
    await page.locator("#status", { hasText: "Kept 6 flights" }).waitFor();
    await page.close();

    const { page: again, problems: later } = await openPage(context, address);
    await again.locator("#go-logbook").click();
    await again.locator(".book-flights > li").nth(5).waitFor();
    expect(await again.locator("#book-place").textContent()).toMatch(/this browser on this device/);

    await again.getByRole("button", { name: "Timer", exact: true }).click();
    await again.locator("#book-view .figures").waitFor();
    const timer = await machine.json<TimerResult>("timer");
    const shownTimer = await numbersIn(again, "#book-view");
    expect(timer.timerS).toBeGreaterThan(60);
    expect(shownTimer.get("timerS")).toBe(timer.timerS);
    expect(shownTimer.get("touchdownByS")).toBe(timer.touchdownByS);
    expect(shownTimer.get("cautiousTimerS")).toBe(timer.cautiousTimerS);

    await again.getByRole("button", { name: "Trends", exact: true }).click();
    await again.locator("#book-view .small-charts").waitFor();
    const { series } = await machine.json<TrendResult>("trend");
    const points = await again
      .locator("#book-view td[data-measure=point]")
      .evaluateAll((cells) => cells.map((cell) => Number(cell.getAttribute("data-value"))));
    const expected = series.flatMap((one) => one.points.map(({ value }) => value));
    expect(points.length).toBe(expected.length);
    for (const value of expected)
      expect(points.some((point) => Math.abs(point / value - 1) < SAME)).toBe(true);

    await again.locator("#go-swap").click();
    const diameter = again.locator("[data-swap=diameterIn]");
    await diameter.press("ArrowUp");
    await again.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    const swap = await machine.json<SwapResult>("swap --propeller 19x10");
    const shownSwap = await numbersIn(again, "#swap-view");
    for (const name of ["staticCurrentA", "flightTimeS", "minCellV"] as const) {
      const sides = [swap.measures[name].value, swap.before.measures[name].value];
      const shown = [shownSwap.get(name), shownSwap.get(`before.${name}`)];
      sides.forEach((side, at) => {
        expect(Math.abs((shown[at] ?? Number.NaN) / (side ?? 0) - 1), name).toBeLessThan(SAME);
      });
    }
    expect([...problems, ...later]).toEqual([]);
    await context.close();
  });

  it("needs no pointer: places, aircraft, a change and a log by keys alone", async () => {
    const context = await browser.newContext({ offline: true });
    const { page, problems } = await openPage(context, address);
    const tabTo = async (selector: string): Promise<void> => {
      for (let steps = 0; steps < 80; steps += 1) {
        await page.keyboard.press("Tab");
        if (await page.evaluate((one) => document.activeElement?.matches(one) ?? false, selector)) return;
      }
      throw new Error(`no way by Tab to ${selector}`);
    };
    // Asked for early: a chooser that opens before the browser has been told to hand it over is lost.
    const chooser = page.waitForEvent("filechooser", { timeout: 60_000 });
    await tabTo("#go-aircraft");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("aircraft-title");
    await tabTo("#new-aircraft");
    await page.keyboard.press("Enter");
    await page.locator("#plan .headline").waitFor();
    await tabTo('[data-key="planned.flightTimeS"]');
    await page.keyboard.press("Control+a");
    await page.keyboard.type("abc");
    await page.locator(".wrong:not([hidden])").waitFor();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("300");
    await page.locator("#plan-planned").waitFor();
    await page.locator(".wrong:not([hidden])").waitFor({ state: "hidden" });
    await page.keyboard.press("Shift+Tab");
    for (let steps = 0; steps < 80; steps += 1) {
      if (await page.evaluate(() => document.activeElement?.id === "go-swap")) break;
      await page.keyboard.press("Shift+Tab");
    }
    await page.keyboard.press("Enter");
    await tabTo("[data-swap=cells]");
    await page.keyboard.press("ArrowUp");
    await page.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    expect(await page.locator("[data-swap=cells]").inputValue()).toBe("9");
    for (let steps = 0; steps < 80; steps += 1) {
      if (await page.evaluate(() => document.activeElement?.id === "go-log")) break;
      await page.keyboard.press("Shift+Tab");
    }
    await page.keyboard.press("Enter");
    await tabTo("#choose-logs");
    await page.keyboard.press("Enter");
    await (await chooser).setFiles(join(FIXTURES, "flight-01.csv"));
    await page.locator("#report .foot").waitFor();
    await tabTo("#keep summary");
    expect(problems).toEqual([]);
    await context.close();
  });

  it("fits 320 px with targets for a thumb, in every place", async () => {
    const context = await browser.newContext({
      offline: true,
      viewport: { width: 320, height: 700 },
      hasTouch: true,
      isMobile: true,
    });
    const { page, problems } = await openPage(context, address);
    const fits = async (state: string): Promise<void> => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth), state).toBeLessThanOrEqual(320);
      expect(await smallTargets(page), state).toEqual([]);
    };
    await page.locator("#aircraft-input").setInputFiles(AIRCRAFT);
    await page.locator("#logs-input").setInputFiles(join(FIXTURES, "flight-01.csv"));
    await page.locator("#report .foot").waitFor();
    await fits("log");
    await page.locator("#keep summary").tap();
    await page.getByRole("button", { name: "Keep this log" }).tap();
    await page.locator(".kept").waitFor();
    await page.locator("#go-aircraft").tap();
    await page.locator("#plan .headline").waitFor();
    await fits("aircraft");
    await page.locator("#units").selectOption("imperial");
    await page.locator('[data-key="controller.limitC"]').waitFor();
    await expect.poll(() => page.locator('[data-key="controller.limitC"]').inputValue()).toBe("212");
    await page.locator("#go-swap").tap();
    await page.getByRole("button", { name: "Blades: more" }).tap();
    await page.locator("#swap-now", { hasText: "Predicted" }).waitFor();
    await fits("what if");
    await page.locator("#go-logbook").tap();
    for (const view of ["Timer", "Trends", "Season report", "Flights"]) {
      await page.getByRole("button", { name: view, exact: true }).tap();
      await page.locator("#book-view h2, #book-report .foot").first().waitFor();
      await fits(view);
    }
    await page.getByRole("button", { name: /^Remove/ }).tap();
    await page.getByRole("button", { name: "Yes, remove it" }).tap();
    await page.locator(".empty").waitFor();
    await page.getByText("Save, take in, undo").tap();
    await page.locator("#undo-book").tap();
    await page.locator(".book-flights > li").waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("shows attack strings in aircraft, packs, notes and logs of the book as text", async () => {
    const context = await browser.newContext({ offline: true, bypassCSP: true });
    const { page } = await openPage(context, address);
    const bytes = (at: number): ArrayBuffer =>
      Uint8Array.from(Buffer.from(flightLog({ currentA: 20 + at }))).buffer;
    const nothing = { propeller: null, ambientC: null, startPct: null, putBackMah: null, flownS: null };
    for (const [at, attack] of ATTACK_STRINGS.slice(0, 8).entries()) {
      const text = JSON.stringify({
        name: `${attack}${at}`.slice(0, 60),
        pack: { cells: 8, capacityMah: 5000 },
      });
      const given = { ...nothing, pack: attack.slice(0, 60), putBackFlights: [], date: null, note: attack };
      const own = { kind: "add", file: `${attack}.csv`, bytes: bytes(at), given, answers: null } as const;
      const aircraft = { text, file: "aircraft.json" };
      await ask(page, { ...own, aircraft, chargedWith: [], isAgain: true, run: `run-${at}` });
    }
    await page.locator("#go-aircraft").click();
    await page.locator("#aircraft-kept button").first().click();
    await page.locator("#plan .headline").waitFor();
    await page.locator("#go-logbook").click();
    await page.locator("#book-choices select").waitFor();
    for (const view of ["Timer", "Trends", "Season report", "Flights"]) {
      await page.getByRole("button", { name: view, exact: true }).click();
      await page.locator("#book-view h2, #book-report .foot").first().waitFor();
    }
    expect(await page.evaluate(() => "__pwn" in globalThis)).toBe(false);
    expect(page.url()).toBe(address);
    expect(await page.locator("#book-view img, #book-view iframe, main form, main object").count()).toBe(0);
    await context.close();
  });

  it("opens the log that was chosen, whatever is read before it", async () => {
    const context = await browser.newContext({ offline: true });
    const { page } = await openPage(context, address);
    const files = [1, 2, 3, 4].map((number) => ({
      name: `log-${number}.csv`,
      mimeType: "text/csv",
      buffer: Buffer.from(flightLog({ currentA: 20 + number })),
    }));
    await page.locator("#logs-input").setInputFiles(files);
    await page.getByRole("button", { name: "log-3.csv" }).click();
    await page.waitForFunction(() => document.querySelector("#logs [data-state=busy]") === null);
    await page.locator("#report .foot").waitFor();
    expect(await page.locator("#report .file").first().textContent()).toContain("log-3.csv");
    await context.close();
  });
});

/** The whole numbers that a part of the page carries, by the name of their measure. */
async function numbersIn(page: Page, selector: string): Promise<ReadonlyMap<string, number>> {
  const pairs = await page
    .locator(`${selector} [data-measure]`)
    .evaluateAll((all) =>
      all.map((one) => [one.getAttribute("data-measure"), one.getAttribute("data-value")] as const),
    );
  return new Map(pairs.map(([name, value]) => [name ?? "", Number(value)]));
}

/** What the page itself offers to a thumb in less than 44 px; reports have marks of their own. */
function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, select, input, summary")]
      .filter(
        (one) => one.checkVisibility() && one.closest("#report, #book-report, #book-view .trends") === null,
      )
      .filter((one) => one.getBoundingClientRect().height < 43.5)
      .map((one) => one.outerHTML.slice(0, 120)),
  );
}
