import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import type { ListResult } from "../../src/season/logbook/index.ts";
import type { TimerResult } from "../../src/season/timer/index.ts";
import type { TrendResult } from "../../src/season/trends/index.ts";
import { commandOn } from "../server/commandOn.ts";
import { serve } from "../server/served.ts";
import { hasBrowser, openBrowser, withBrowser } from "./browser.ts";
import { openPage } from "./pageCore.ts";

const TERN = resolve(import.meta.dirname, "../../fixtures/tern");
const AIRCRAFT = join(TERN, "aircraft.json");
const LOGS = ["01", "02", "03"].map((number) => join(TERN, `flight-${number}.csv`));
/** Two engines' Math.exp differ in the last bit, and what is solved from it amplifies that. */
const CLOSE = 1e-9;

describe.skipIf(!hasBrowser())(withBrowser("a pilot's walk through the page"), () => {
  let browser: Browser;
  let folder: string;
  let text: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "page-walk-"));
    text = (await pageText()) as string;
    writeFileSync(join(folder, "page.html"), text);
    browser = await openBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("over the server: drop, keep, close, reopen; the numbers are the command's on that folder", async () => {
    const served = await serve(text);
    const context = await browser.newContext();
    await walk(context, `${served.origin}/#${served.token}`, served.folder);
    expect(served.bugs).toEqual([]);
    await served.end();
  });

  it("from disk without network: the same, beside a folder with the same logs", async () => {
    const book = join(folder, "book");
    mkdirSync(book);
    await commandOn(book, folder, ["add", ...LOGS, "--aircraft", AIRCRAFT]);
    const context = await browser.newContext({ offline: true });
    await walk(context, pathToFileURL(join(folder, "page.html")).href, book);
  });

  async function walk(context: BrowserContext, address: string, book: string): Promise<void> {
    context.setDefaultTimeout(20_000);
    const first = await openPage(context, address);
    await keepLogs(first.page);
    await first.page.close();
    const { page, problems } = await openPage(context, address);
    await page.locator("#go-logbook").click();
    await page
      .locator("li[data-flight]")
      .nth(LOGS.length - 1)
      .waitFor();
    const json = async <Result>(command: string) =>
      JSON.parse(await commandOn(book, folder, [command, "--json"])) as Result;
    const { flights } = await json<ListResult>("list");
    const shown = await page
      .locator("li[data-flight]")
      .evaluateAll((items) => items.map((one) => one.dataset.flight));
    expect(shown).toEqual(flights.map(({ flight }) => flight).toReversed());
    const timer = await json<TimerResult>("timer");
    await page.getByRole("button", { name: "Timer", exact: true }).click();
    const ofTimer = await carriedIn(page, "timerS");
    for (const name of ["timerS", "touchdownByS", "cautiousTimerS"] as const) {
      expect(timer[name], name).toBeGreaterThan(0);
      expect(ofTimer.get(name), name).toContainEqual(timer[name]);
    }
    await page.getByRole("button", { name: "Trends", exact: true }).click();
    const ofTrends = await carriedIn(page, "controllerRisePerA2");
    const { series } = await json<TrendResult>("trend");
    expect(series.flatMap(({ points }) => points).length).toBeGreaterThanOrEqual(LOGS.length);
    for (const { measure, points, slopePerFlight } of series) {
      // A slope is a difference of points: what engines differ by shows in it at the points' size.
      const size = Math.max(...points.map(({ value }) => Math.abs(value)));
      const isShown = (name: string, value: number) =>
        (ofTrends.get(name) ?? []).some((one) => Math.abs(one - value) < CLOSE * size);
      for (const { value } of points) expect(isShown("point", value), `${measure} ${value}`).toBe(true);
      const slope = slopePerFlight.value;
      if (slope !== null) expect(isShown(measure, slope), `${measure} ${slope}`).toBe(true);
    }
    expect([...first.problems, ...problems]).toEqual([]);
    await context.close();
  }
});

/** Takes the aircraft in, drops the logs and keeps them all. */
async function keepLogs(page: Page): Promise<void> {
  await page.locator("#aircraft-input").setInputFiles(AIRCRAFT);
  await page.getByText("limits of Tern").first().waitFor();
  await page.locator("#logs-input").setInputFiles(LOGS);
  await page.getByText(`, ${LOGS.length} of ${LOGS.length}`).waitFor({ state: "hidden" });
  await page
    .locator("#logs li", { hasText: "1 flight" })
    .nth(LOGS.length - 1)
    .waitFor();
  await page.locator("#logs button").first().click();
  await page.locator("#keep summary").click();
  await page.getByRole("button", { name: `Keep all ${LOGS.length} logs` }).click();
  await page.getByText(`Kept ${LOGS.length} flights.`).waitFor();
}

/** Every whole number that the view carries, by what it is of, once it carries the one awaited. */
async function carriedIn(page: Page, awaited: string): Promise<ReadonlyMap<string, readonly number[]>> {
  const view = page.locator("#book-view [data-measure]");
  await page.locator(`#book-view [data-measure=${awaited}]`).first().waitFor({ state: "attached" });
  const pairs = await view.evaluateAll((marks) =>
    marks.map(
      (one) => [one.getAttribute("data-measure") ?? "", Number(one.getAttribute("data-value"))] as const,
    ),
  );
  const byName = new Map<string, number[]>();
  for (const [name, value] of pairs) byName.set(name, [...(byName.get(name) ?? []), value]);
  return byName;
}
