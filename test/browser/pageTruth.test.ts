import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { SwapResult } from "../../src/flight/judgement/index.ts";
import { NOTHING_GIVEN } from "../../src/season/logbook/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";
import { serve } from "../server/served.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { askedCount, disturbCore, endCore, fail, heldCount, hold, lastAsked, release } from "./coreGate.ts";
import { isAlike } from "./different.ts";
import { ask, openPage } from "./pageCore.ts";
import {
  AIRCRAFT,
  allRead,
  csvFile,
  numbersIn,
  PageDesk,
  readLogs,
  takeAircraft,
  ternLog,
} from "./pageDesk.ts";

/** The aircraft's place, with a plan from two logs of it. */
async function planOfTwoLogs(page: Page): Promise<void> {
  await takeAircraft(page, csvFile("heron.json", SAMPLE_AIRCRAFT));
  await readLogs(page, [
    csvFile("one.csv", flightLog({ currentA: 28 })),
    csvFile("two.csv", flightLog({ currentA: 31 })),
  ]);
  await page.locator("#go-aircraft").click();
}

type CsvFile = ReturnType<typeof csvFile>;

describe.skipIf(!hasBrowser())(withBrowser("the page loses, mixes and swallows nothing"), () => {
  let desk: PageDesk;
  beforeAll(async () => {
    desk = await PageDesk.open();
  });
  afterAll(() => desk?.close());

  it("keeps every edit of the aircraft made while the core is busy, also in the file it saves", async () => {
    const { context, page, problems } = await desk.page();
    await page.locator("#go-aircraft").click();
    await takeAircraft(page);
    await page.locator("#plan .headline").waitFor();
    await hold(page, "editAircraft");
    await page.locator('[data-key="controller.continuousA"]').fill("91");
    await expect.poll(() => heldCount(page)).toBe(1);
    await page.locator('[data-key="motor.maxPowerW"]').fill("2222");
    await page.waitForTimeout(300);
    expect(await heldCount(page), "the second waits for the first").toBe(1);
    await page.locator('[data-key="reservePct"]').fill("31");
    const saved = page.waitForEvent("download");
    await page.locator("#save-aircraft").click();
    await release(page);
    const text = readFileSync(await (await saved).path(), "utf8");
    expect(text).toMatch(/"continuousA": 91\b/);
    expect(text).toMatch(/"maxPowerW": 2222\b/);
    expect(text).toMatch(/"reservePct": 31\b/);
    await page.locator('[data-key="reservePct"]').fill("999");
    await page.locator("#save-aircraft").click();
    await page.locator("#status", { hasText: "Correct the marked lines first." }).waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("shows the flights of the aircraft chosen last, whichever answer comes last", async () => {
    const { context, page, problems } = await desk.page();
    for (const [at, name] of ["Heron", "Egret"].entries()) {
      const aircraft = { text: SAMPLE_AIRCRAFT.replace("Heron", name), file: "a.json" };
      const bytes = Uint8Array.from(
        Buffer.from(flightLog({ startsAt: `2026-06-0${at + 1} 10:00:00`, currentA: 20 + 5 * at })),
      );
      const own = { kind: "add", file: "log.csv", bytes: bytes.buffer, given: NOTHING_GIVEN } as const;
      await ask(page, { ...own, aircraft, answers: null, chargedWith: [], isAgain: true, run: name });
    }
    await page.locator("#go-logbook").click();
    const choice = page.locator("#book-aircraft");
    await choice.waitFor();
    await hold(page, "list");
    await choice.selectOption("Heron");
    await choice.selectOption("Egret");
    await expect.poll(() => heldCount(page)).toBe(2);
    await release(page, "last first");
    await page.locator(".book-flights > li").waitFor();
    await page.waitForTimeout(100);
    const shown = await page
      .locator("[data-flight]")
      .evaluateAll((all) => all.map(({ dataset }) => dataset.flight));
    expect(shown).toEqual(["2026-06-02-1"]);
    expect(problems).toEqual([]);
    await context.close();
  });

  it("says in words whatever fails, in every place, and when its core ends", async () => {
    const { context, page, problems } = await desk.page();
    const status = page.locator("#status");
    const said = async (kind: string, act: () => Promise<unknown>): Promise<void> => {
      await page.evaluate(() => document.getElementById("status")?.replaceChildren());
      await fail(page, kind);
      await act();
      await status.filter({ hasText: `This page met a fault of its own: no ${kind} today.` }).waitFor();
      await fail(page);
    };
    await said("aircraft", () => page.locator("#aircraft-input").setInputFiles(AIRCRAFT));
    await takeAircraft(page);
    await said("list", () => page.locator("#go-aircraft").click());
    await said("plan", () => page.locator('[data-key="reservePct"]').fill("30"));
    await said("editAircraft", () => page.locator('[data-key="reservePct"]').fill("31"));
    await said("keepAircraft", () => page.locator("#keep-aircraft").click());
    await said("aircraft", () => page.locator("#go-swap").click());
    await said("swap", () =>
      page.locator("#units").evaluate((one) => one.dispatchEvent(new Event("change"))),
    );
    await said("list", () => page.locator("#go-logbook").click());
    await said("undo", () => page.locator("#undo-book").evaluate((one) => (one as HTMLElement).click()));
    await said("export", () => page.locator("#export-book").evaluate((one) => (one as HTMLElement).click()));
    await said("import", () => page.locator("#book-input").setInputFiles(csvFile("x.book.json", "{}")));
    await page.locator("#go-log").click();
    await fail(page, "check");
    await readLogs(page, csvFile("one.csv", flightLog()));
    expect(await page.locator("#logs .state").textContent()).toContain("no check today");
    await fail(page);
    await hold(page, "check");
    await page.locator("#logs button").click();
    await expect.poll(() => heldCount(page)).toBe(1);
    const state = page.locator("#logs .state");
    await disturbCore(page);
    await state.filter({ hasText: "The analysis met an error (a stray error) and may not" }).waitFor();
    await release(page);
    await page.locator("#logs button").click();
    await state.filter({ hasText: "1 flight" }).waitFor();
    await hold(page, "check");
    await page.locator("#aircraft-input").setInputFiles(csvFile("heron.json", SAMPLE_AIRCRAFT));
    await expect.poll(() => heldCount(page)).toBe(1);
    await endCore(page);
    const ended = "The analysis answers no more after an error (out of memory)";
    await state.filter({ hasText: ended }).waitFor();
    await page.locator("#go-logbook").click();
    await status.filter({ hasText: ended }).waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("shows how far a log has come and what it held, and reckons What if from it as the command does with --log", async () => {
    const logs = [
      csvFile("bench-run.csv", readFileSync(ternLog("bench-run"))),
      csvFile("short.csv", flightLog({ currentA: 31 })),
    ];
    const machine = new BookMachine({ "tern.json": readFileSync(AIRCRAFT, "utf8") });
    for (const { name, buffer } of logs) machine.files[name] = buffer;
    const named = logs.map(({ name }) => `--log ${name}`).join(" ");
    const swap = await machine.json<SwapResult>(`swap --aircraft tern.json ${named} --propeller 19x10`);
    const { context, page } = await desk.page();
    await page.evaluate(() => {
      const seen: string[] = [];
      Object.assign(globalThis, { seen });
      const note = () => {
        const bar = document.querySelector("#logs progress");
        if (bar !== null) seen.push(`${bar.getAttribute("value")} ${bar.getAttribute("aria-label")}`);
      };
      new MutationObserver(note).observe(document.getElementById("logs") as Node, {
        childList: true,
        subtree: true,
      });
    });
    await readLogs(page, logs);
    const seen = await page.evaluate(() => (globalThis as unknown as { seen: string[] }).seen);
    expect([...new Set(seen)]).toEqual(["0 being read", "0.1 being read", "0.7 its report is being written"]);
    expect(await page.locator("#logs .state").allTextContents()).toEqual(["1 bench run", "1 flight"]);
    expect(await page.locator("#logs progress").count()).toBe(0);
    await takeAircraft(page);
    await page.locator("#go-aircraft").click();
    const restsOn = { hasText: "measured flights: 2 of the logs on this page (bench-run.csv, short.csv)." };
    await page.locator("#plan", restsOn).waitFor();
    await page.locator('[data-key="reservePct"]').fill("20");
    await expect
      .poll(() => lastAsked(page, "plan"))
      .toMatchObject({ aircraft: { text: expect.stringMatching(/"reservePct": 20\b/) } });
    expect(await lastAsked(page, "plan"), "an edit waits for its logs").toMatchObject({ logs: [{}, {}] });
    await page.locator('[data-key="reservePct"]').fill("25");
    await page.locator("#go-swap").click();
    await page.locator("[data-swap=diameterIn]").press("ArrowUp");
    await page
      .locator("#swap-view", {
        hasText: "measured flights: 2 of the logs on this page (bench-run.csv, short.csv).",
      })
      .waitFor();
    await page.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
    const different = async (): Promise<readonly string[]> => {
      const shown = await numbersIn(page, "#swap-view");
      return (["staticCurrentA", "flightTimeS", "minCellV"] as const).filter(
        (name) =>
          !isAlike(name, swap.measures[name].value, shown.get(name)?.[0]) ||
          !isAlike(name, swap.before.measures[name].value, shown.get(`before.${name}`)?.[0]),
      );
    };
    await expect.poll(different, { timeout: 10_000 }).toEqual([]);
    await context.close();
  });

  it("names the logs that a plan counts, and counts none that the pilot leaves out of that aircraft", async () => {
    const { context, page, problems } = await desk.page();
    await planOfTwoLogs(page);
    const rests = (place: string, words: string) => page.locator(place, { hasText: words }).waitFor();
    await rests("#plan", "2 of the logs on this page (one.csv, two.csv).");
    await rests("#plan", "leave out those that Heron did not fly with these parts");
    await page.getByRole("button", { name: "Leave out one.csv" }).press("Enter");
    await rests("#plan", "1 of the logs on this page (two.csv).");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Count one.csv again");
    expect(await lastAsked(page, "plan")).toMatchObject({ logs: [{}] });
    await page.locator('[data-key="name"]').fill("Grey heron");
    await rests("#plan", "those that Grey heron did not fly");
    await rests("#plan", "1 of the logs on this page (two.csv).");
    await page.locator("#go-swap").click();
    await rests("#swap-view", "1 of the logs on this page (two.csv).");
    await page.getByRole("button", { name: "Count one.csv again" }).click();
    await rests("#swap-view", "2 of the logs on this page (one.csv, two.csv).");
    await page.getByRole("button", { name: "Leave out two.csv" }).click();
    await rests("#swap-view", "1 of the logs on this page (one.csv).");
    await takeAircraft(page, csvFile("egret.json", SAMPLE_AIRCRAFT.replace("Heron", "Egret")));
    await rests("#swap-view", "2 of the logs on this page (one.csv, two.csv).");
    expect(problems).toEqual([]);
    await context.close();
  });

  it("measures logs again without a word, where a fact changed, and those that failed no more", async () => {
    const { context, page, problems } = await desk.page();
    await planOfTwoLogs(page);
    const fill = async (key: string, value: string, logs: number): Promise<void> => {
      const written = { aircraft: { text: expect.stringContaining(value) } };
      await page.locator(`[data-key="${key}"]`).fill(value);
      await expect.poll(() => lastAsked(page, "plan")).toMatchObject(written);
      await expect
        .poll(() => lastAsked(page, "plan"))
        .toMatchObject({ logs: Array.from({ length: logs }, () => ({})) });
    };
    await page.locator("#plan", { hasText: "2 of the logs" }).waitFor();
    await page.locator("#save-aircraft").click();
    const status = page.locator("#status");
    await status.filter({ hasText: "Saved as heron.json." }).waitFor();
    await fill("reservePct", "31.25", 2);
    await fill("name", "Grey heron", 2);
    expect(await askedCount(page, "check"), "no measure depends on these").toBe(2);
    await fill("motor.kv", "251.5", 2);
    expect(await askedCount(page, "check")).toBe(4);
    expect(await page.locator("#logs .state").allTextContents()).toEqual(["1 flight", "1 flight"]);
    await fail(page, "check");
    await fill("motor.kv", "252.5", 0);
    await expect.poll(() => askedCount(page, "check")).toBe(6);
    await page.locator("#logs [data-state=failed]").nth(1).waitFor({ state: "attached" });
    await fail(page);
    await fill("motor.kv", "253.5", 0);
    await fill("reservePct", "32.25", 0);
    expect(await askedCount(page, "check"), "they failed").toBe(6);
    expect(await status.textContent()).toBe("Saved as heron.json.");
    await page.locator("#go-log").click();
    await page.locator("#logs button", { hasText: "two.csv" }).click();
    await allRead(page);
    await page.locator("#go-aircraft").click();
    await page.locator("#plan", { hasText: "of the logs on this page (" }).waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("takes facts and the timer's day in the units chosen, and keeps them in its own", async () => {
    const { context, page, problems } = await desk.page();
    await takeAircraft(page);
    await page.locator("#go-aircraft").click();
    await page.locator("#units").selectOption("imperial");
    await page.locator("#go-log").click();
    await readLogs(page, ternLog("flight-01"));
    await page
      .locator("#report-units", { hasText: "Reports, timer and trends are in °C, m and kg." })
      .waitFor();
    await page.locator("#keep summary").click();
    const air = page.locator("#keep [name=ambientC]");
    await air.fill("141");
    await page.getByRole("button", { name: "Keep this log" }).click();
    await page.getByText("Air temperature must be a number from -40 to 140.").waitFor();
    await air.fill("68");
    await page.locator("#keep [name=pack]").fill("A");
    await page.locator("#go-logbook").click();
    await page.locator("#go-log").click();
    expect(await air.inputValue(), "what was typed stays").toBe("68");
    await page.getByRole("button", { name: "Keep this log" }).click();
    await page.locator(".kept").waitFor();
    const { list } = await ask(page, { kind: "list", aircraft: null });
    expect(list.flights.map(({ given }) => given.ambientC)).toEqual([20]);
    await page.locator("#go-logbook").click();
    await page.locator(".book-flights > li", { hasText: "pack A, 68 °F" }).waitFor();
    expect(await page.locator("[data-measure=controllerPeakC]").textContent()).toMatch(/°F$/);
    await page.getByRole("button", { name: /^Facts of/ }).click();
    expect(await page.locator(".edit [name=ambientC]").inputValue()).toBe("68");
    await page.locator(".edit [name=note]").fill("calm");
    await page.getByRole("button", { name: "Save the facts" }).click();
    await page.locator(".book-flights > li", { hasText: "“calm”" }).waitFor();
    expect((await ask(page, { kind: "list", aircraft: null })).list.flights[0]?.given.ambientC).toBe(20);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Open");
    await page.getByRole("button", { name: "Timer", exact: true }).click();
    await page.locator(".next-flight [name=ambientC]").fill("86");
    await page.locator("#book-view", { hasText: "Reports, timer and trends are in °C, m and kg." }).waitFor();
    await expect.poll(() => lastAsked(page, "timer")).toMatchObject({ ambientC: 30, reservePct: null });
    await page.getByRole("button", { name: "Flights", exact: true }).click();
    await page.getByRole("button", { name: /^Remove/ }).click();
    await page.getByRole("button", { name: "Yes, remove it" }).click();
    await page.locator(".empty").waitFor();
    await page.locator("#go-log").click();
    await page.locator("#logs .state", { hasText: "not in the logbook any more" }).waitFor();
    await page.locator("#keep summary").waitFor();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("says that a log is not in the logbook any more where that is so, whatever has its name now", async () => {
    const { context, page, problems } = await desk.page();
    const [one, two, three] = [28, 31, 34].map((currentA, at) =>
      csvFile(`${at + 1}.csv`, flightLog({ startsAt: `2026-06-0${at > 1 ? 2 : 1} 10:00:00`, currentA })),
    ) as [CsvFile, CsvFile, CsvFile];
    const heron = { text: SAMPLE_AIRCRAFT, file: "heron.json" };
    const add = async ({ name, buffer }: CsvFile): Promise<readonly string[]> => {
      const own = { kind: "add", file: name, given: NOTHING_GIVEN } as const;
      const bytes = Uint8Array.from(buffer).buffer;
      const more = { aircraft: heron, answers: null, chargedWith: [], isAgain: true, run: name };
      const { outcome } = await ask(page, { ...own, bytes, ...more });
      return outcome.state === "stopped" ? [] : outcome.flights;
    };
    await takeAircraft(page, csvFile("heron.json", SAMPLE_AIRCRAFT));
    await readLogs(page, one);
    await page.locator("#keep summary").click();
    const keep = page.getByRole("button", { name: "Keep this log" });
    await keep.click();
    await page.locator("#logs .state", { hasText: "in the logbook as 2026-06-01-1" }).waitFor();
    await ask(page, { kind: "remove", flights: ["2026-06-01-1"] });
    expect(await add(two), "the name is free again").toEqual(["2026-06-01-1"]);
    await add(three);
    const undo = () => page.locator("#undo-book").evaluate((button) => (button as HTMLElement).click());
    await page.locator("#go-logbook").click();
    await undo();
    await page
      .locator("#logs .state", { hasText: "not in the logbook any more" })
      .waitFor({ state: "attached" });
    // A list that was asked for before a log was kept, and tells nothing of it.
    await hold(page, "list");
    await undo();
    await expect.poll(() => heldCount(page)).toBeGreaterThan(0);
    await page.locator("#go-log").click();
    await page.locator("#keep summary").click();
    await keep.click();
    const kept = page.locator("#logs .state", { hasText: "in the logbook as 2026-06-01-2" });
    await kept.waitFor();
    await ask(page, { kind: "remove", flights: ["2026-06-01-2"] });
    await release(page);
    await page.locator("#go-logbook").click();
    await page.locator(".book-flights > li").nth(1).waitFor();
    expect(await kept.count()).toBe(1);
    expect(problems).toEqual([]);
    await context.close();
  });

  it("takes a dropped folder with the folders in it, and an aircraft file among the logs", async () => {
    const dropped = join(desk.folder, "club day");
    mkdirSync(join(dropped, "later"), { recursive: true });
    writeFileSync(join(dropped, "later", "c.csv"), flightLog({ currentA: 26 }));
    writeFileSync(join(dropped, "later", ".hidden.csv"), "not for us");
    writeFileSync(join(dropped, "heron.json"), SAMPLE_AIRCRAFT);
    writeFileSync(join(desk.folder, "a.csv"), flightLog({ currentA: 30 }));
    const served = await serve(desk.text);
    const onServer = `${served.origin}/#${served.token}`;
    const drop = async (page: Page, ...files: readonly string[]): Promise<void> => {
      const session = await page.context().newCDPSession(page);
      const at = { x: 300, y: 300, data: { items: [], files: [...files], dragOperationsMask: 1 } };
      for (const type of ["dragEnter", "dragOver", "drop"] as const)
        await session.send("Input.dispatchDragEvent", { type, ...at });
    };
    // Browsers that know no handles of what is dropped open its entries; on a page from disk Chromium does not.
    for (const [address, hasHandles] of [
      [desk.address, true],
      [onServer, false],
    ] as const) {
      const context = await desk.context({ offline: false });
      if (!hasHandles)
        await context.addInitScript(() =>
          Reflect.deleteProperty(DataTransferItem.prototype, "getAsFileSystemHandle"),
        );
      const { page, problems } = await openPage(context, address);
      await drop(page, join(desk.folder, "a.csv"), dropped);
      await page.locator("#logs li").nth(1).waitFor();
      await allRead(page);
      await page.locator("#held", { hasText: "limits of Heron" }).waitFor();
      expect(await page.locator("#logs .state").allTextContents()).toEqual(["1 flight", "1 flight"]);
      expect(await page.locator("#logs button").allTextContents()).toEqual(["a.csv", "c.csv"]);
      expect(problems).toEqual([]);
      await context.close();
    }
    const context = await desk.context();
    await context.addInitScript(() =>
      Reflect.deleteProperty(DataTransferItem.prototype, "getAsFileSystemHandle"),
    );
    const { page } = await openPage(context, desk.address);
    await drop(page, dropped);
    await page.locator("#status", { hasText: "Use Choose a folder" }).waitFor();
    await drop(page, join(desk.folder, "a.csv"));
    await page.locator("#logs li").waitFor();
    await context.close();
    await served.end();
  });
});
