import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serverSentences } from "../../src/apps/server/bookClient.ts";
import type { SwapResult } from "../../src/flight/judgement/index.ts";
import type { ListResult } from "../../src/season/logbook/index.ts";
import type { TimerResult } from "../../src/season/timer/index.ts";
import { flightLog } from "../commands/bookMachine.ts";
import { commandOn } from "../server/commandOn.ts";
import { type Served, serve } from "../server/served.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { isAlike } from "./different.ts";
import { openPage } from "./pageCore.ts";
import { AIRCRAFT, csvFile, numbersIn, PageDesk, readLogs, takeAircraft, ternLog } from "./pageDesk.ts";

const LOGS = ["flight-01", "flight-02"].map(ternLog);

describe.skipIf(!hasBrowser())(withBrowser("a pilot's walk through the served page"), () => {
  let desk: PageDesk;
  let served: Served;
  beforeAll(async () => {
    desk = await PageDesk.open();
    served = await serve(desk.text);
  });
  afterAll(async () => {
    await desk?.close();
    await served?.end();
  });

  const json = async <Result>(...words: readonly string[]) =>
    JSON.parse(await commandOn(served.folder, desk.folder, [...words, "--json"])) as Result;

  it("drop, keep, close, reopen: the numbers are the command's on that folder", async () => {
    const context = await desk.context({ offline: false });
    const address = `${served.origin}/#${served.token}`;
    const first = await openPage(context, address);
    await takeAircraft(first.page);
    await readLogs(first.page, LOGS);
    await first.page.locator("#logs button").first().click();
    await first.page.locator("#keep summary").click();
    await first.page.getByRole("button", { name: `Keep all ${LOGS.length} logs` }).click();
    await first.page.getByText(`Kept ${LOGS.length} flights.`).waitFor();
    await first.page.close();
    const { page, problems } = await openPage(context, address);
    await page.locator("#go-logbook").click();
    const items = page.locator("li[data-flight]");
    await items.nth(LOGS.length - 1).waitFor();
    const { flights } = await json<ListResult>("list");
    const shown = await items.evaluateAll((all) => all.map((one) => one.dataset.flight));
    expect(shown).toEqual(flights.map(({ flight }) => flight).toReversed());
    const timer = await json<TimerResult>("timer");
    await page.getByRole("button", { name: "Timer", exact: true }).click();
    await page.locator("#book-view [data-measure=timerS]").first().waitFor({ state: "attached" });
    const ofTimer = await numbersIn(page, "#book-view");
    for (const name of ["timerS", "touchdownByS", "cautiousTimerS"] as const) {
      expect(timer[name], name).toBeGreaterThan(0);
      expect(ofTimer.get(name), name).toContain(timer[name]);
    }
    await page.locator("#go-swap").click();
    await page.locator("[data-swap=cells]").press("ArrowDown");
    await page.locator("#swap-view", { hasText: "measured flights: 2 of the logbook." }).waitFor();
    await page.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    const ofSwap = await numbersIn(page, "#swap-view");
    const { measures } = await json<SwapResult>("swap", "--aircraft", AIRCRAFT, "--cells", "7");
    for (const name of ["staticCurrentA", "minCellV"] as const)
      expect(isAlike(name, measures[name].value, ofSwap.get(name)?.[0]), name).toBe(true);
    const rechecked = await json<{ flights: readonly { changes: readonly unknown[] }[] }>(
      "recheck",
      "--dry-run",
    );
    expect(
      rechecked.flights.map(({ changes }) => changes),
      "a browser's last digits are no change",
    ).toEqual(LOGS.map(() => []));
    expect([...first.problems, ...problems, ...served.bugs]).toEqual([]);
    await context.close();
  });

  it("says that its address is of an earlier start, and reads logs all the same", async () => {
    const context = await desk.context({ offline: false });
    const page = await context.newPage();
    await page.goto(`${served.origin}/#of-an-earlier-start`);
    const said = page.locator("#status", { hasText: serverSentences.oldToken() });
    await said.waitFor();
    expect(await page.locator("#kept").textContent()).toBe(serverSentences.oldToken());
    await readLogs(page, csvFile("one.csv", flightLog()));
    await page.locator("#report .foot").waitFor();
    await page.locator("#go-logbook").click();
    await said.waitFor();
    await context.close();
  });
});
