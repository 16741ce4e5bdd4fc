import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { SwapResult } from "../../src/flight/judgement/index.ts";
import type { TimerResult } from "../../src/season/timer/index.ts";
import type { TrendResult } from "../../src/season/trends/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { isAlike } from "./different.ts";
import { openPage } from "./pageCore.ts";
import { AIRCRAFT, csvFile, numbersIn, PageDesk, readLogs, takeAircraft, ternLog } from "./pageDesk.ts";

/** Flights on two propellers, enough for a timer and trends. */
const SEASON = ["bench-run", "flight-01", "flight-02", "flight-09"];

describe.skipIf(!hasBrowser())(withBrowser("a walk through the page"), () => {
  let desk: PageDesk;
  beforeAll(async () => {
    desk = await PageDesk.open();
  });
  afterAll(() => desk?.close());

  it("keeps a season and says the same as the command line, also after it was closed", async () => {
    const machine = new BookMachine({ "tern.json": readFileSync(AIRCRAFT, "utf8") });
    for (const name of SEASON) machine.files[`${name}.csv`] = readFileSync(ternLog(name), "utf8");
    for (const name of SEASON) await machine.ok(`add ${name}.csv --aircraft tern.json --ambient 20`);

    const { context, page, problems } = await desk.page();
    await takeAircraft(page);
    await readLogs(page, SEASON.map(ternLog));
    await page.locator("#keep summary").click();
    await page.locator("#keep [name=ambientC]").fill("20");
    await page.getByRole("button", { name: /^Keep all/ }).click();
    await page.locator("#status", { hasText: `Kept ${SEASON.length} flights` }).waitFor();
    await page.close();

    const { page: again, problems: later } = await openPage(context, desk.address);
    await again.locator("#go-logbook").click();
    await again
      .locator(".book-flights > li")
      .nth(SEASON.length - 1)
      .waitFor();
    expect(await again.locator("#book-place").textContent()).toMatch(/this browser on this device/);

    await again.getByRole("button", { name: "Timer", exact: true }).click();
    await again.locator("#book-view .figures").waitFor();
    const timer = await machine.json<TimerResult>("timer");
    const shownTimer = await numbersIn(again, "#book-view");
    expect(timer.timerS).toBeGreaterThan(60);
    for (const name of ["timerS", "touchdownByS", "cautiousTimerS"] as const)
      expect(shownTimer.get(name), name).toContain(timer[name]);

    await again.getByRole("button", { name: "Trends", exact: true }).click();
    await again.locator("#book-view .small-charts").waitFor();
    const { series } = await machine.json<TrendResult>("trend");
    const shownTrends = await numbersIn(again, "#book-view");
    const points = shownTrends.get("point") ?? [];
    expect(points).toHaveLength(series.flatMap((one) => one.points).length);
    for (const { measure, points: expected, slopePerFlight: slope } of series) {
      for (const { value } of expected)
        expect(
          points.some((point) => isAlike("point", point, value)),
          `${measure} ${value}`,
        ).toBe(true);
      // A slope is a difference of points: what engines differ by shows in it at the points' size.
      const size = Math.max(...expected.map(({ value }) => Math.abs(value)));
      const isShown = (shownTrends.get(measure) ?? []).some(
        (one) => slope.value !== null && Math.abs(one - slope.value) < 1e-10 * size,
      );
      if (slope.value !== null) expect(isShown, `slope of ${measure}`).toBe(true);
    }

    await again.locator("#go-swap").click();
    const diameter = again.locator("[data-swap=diameterIn]");
    await diameter.press("ArrowUp");
    await again.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    const swap = await machine.json<SwapResult>("swap --propeller 19x10");
    const shownSwap = await numbersIn(again, "#swap-view");
    for (const name of ["staticCurrentA", "flightTimeS", "minCellV"] as const) {
      const sides = [swap.measures[name].value, swap.before.measures[name].value];
      const shown = [shownSwap.get(name)?.[0], shownSwap.get(`before.${name}`)?.[0]];
      sides.forEach((side, at) => {
        expect(isAlike(name, side, shown[at]), `${name}: ${side} and ${shown[at]}`).toBe(true);
      });
    }
    expect([...problems, ...later]).toEqual([]);
    await context.close();
  });

  it("needs no pointer: places, aircraft, a change and a log by keys alone", async () => {
    const { context, page, problems } = await desk.page();
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
    await tabTo('[data-key="pack.cells"]');
    await page.keyboard.press("Control+a");
    await page.keyboard.type("8");
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
    const cells = page.locator("[data-swap=cells]");
    const fitted = Number(await cells.inputValue());
    await page.keyboard.press("ArrowUp");
    await page.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    expect(Number(await cells.inputValue())).toBe(fitted + 1);
    for (let steps = 0; steps < 80; steps += 1) {
      if (await page.evaluate(() => document.activeElement?.id === "go-log")) break;
      await page.keyboard.press("Shift+Tab");
    }
    await page.keyboard.press("Enter");
    await tabTo("#choose-logs");
    await page.keyboard.press("Enter");
    await (await chooser).setFiles(csvFile("short.csv", flightLog()));
    await page.locator("#report .foot").waitFor();
    await tabTo("#keep summary");
    expect(problems).toEqual([]);
    await context.close();
  });

  it("fits 320 px with targets for a thumb, in every place", async () => {
    const phone = { viewport: { width: 320, height: 700 }, hasTouch: true, isMobile: true };
    const { context, page, problems } = await desk.page(phone);
    const fits = async (state: string): Promise<void> => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth), state).toBeLessThanOrEqual(320);
      expect(await smallTargets(page), state).toEqual([]);
    };
    await page.locator("#aircraft-input").setInputFiles(AIRCRAFT);
    await page.locator("#logs-input").setInputFiles(csvFile("short.csv", flightLog()));
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
});

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
