import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { NOTHING_GIVEN } from "../../src/season/logbook/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";
import { commandOn } from "../server/commandOn.ts";
import { serve } from "../server/served.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { different } from "./different.ts";
import { ask, openPage } from "./pageCore.ts";
import { csvFile, PageDesk } from "./pageDesk.ts";

const bytesOf = (text: string): ArrayBuffer => Uint8Array.from(Buffer.from(text)).buffer;

describe.skipIf(!hasBrowser())(withBrowser("the page's book"), () => {
  let desk: PageDesk;
  let machine: BookMachine;
  let wholeBook: ArrayBuffer;

  beforeAll(async () => {
    desk = await PageDesk.open();
    machine = new BookMachine();
    for (let day = 1; day <= 4; day += 1) {
      machine.files[`log-${day}.csv`] = flightLog({
        currentA: 20 + day,
        startsAt: `2026-06-0${day} 10:00:00`,
      });
      await machine.ok(`add log-${day}.csv --aircraft heron.json --pack A --ambient 18`);
    }
    await machine.ok("export season.book.json");
    wholeBook = bytesOf(machine.files["season.book.json"] as string);
  });

  afterAll(() => desk?.close());

  it("lives in the browser from disk: survives closing, goes out and comes in as one file, two pages at once", async () => {
    const context = await desk.context();
    const { page, problems } = await openPage(context, desk.address);
    const taken = await ask(page, { kind: "import", file: "season.book.json", bytes: wholeBook });
    expect(taken.result?.flights).toHaveLength(4);
    await page.close();
    const { page: again, problems: later } = await openPage(context, desk.address);
    const { list } = await ask(again, { kind: "list", aircraft: null });
    expect(list).toEqual(await machine.json("list"));
    const out = await ask(again, { kind: "export" });
    expect(out.text === machine.files["season.book.json"], "the same bytes as the command's").toBe(true);
    const { page: other, problems: more } = await openPage(context, desk.address);
    const add = (on: Page, day: number) =>
      ask(on, {
        ...{ kind: "add", file: `log-${day}.csv`, aircraft: null, given: NOTHING_GIVEN, answers: null },
        ...{ chargedWith: [], isAgain: false, run: `drop ${day}` },
        bytes: bytesOf(flightLog({ currentA: 26 + day, startsAt: `2026-06-1${day} 10:00:00` })),
      });
    const added = await Promise.all([add(again, 1), add(other, 2), add(again, 3), add(other, 4)]);
    expect(
      added.map(({ outcome }) => outcome.state),
      JSON.stringify(added[0]?.outcome),
    ).toEqual(["added", "added", "added", "added"]);
    for (const one of [again, other]) {
      expect((await ask(one, { kind: "list", aircraft: null })).list.flights).toHaveLength(8);
    }
    await context.close();
    expect([...problems, ...later, ...more]).toEqual([]);
  });

  it("says at start that nothing will be kept where the browser gives no storage", async () => {
    const context = await desk.context();
    const page = await context.newPage();
    // An origin of its own for each frame, as a phone gives a page of its downloads.
    await page.goto(desk.address);
    writeFileSync(
      join(desk.folder, "frame.html"),
      `<iframe sandbox="allow-scripts" src="page.html"></iframe>`,
    );
    await page.goto(pathToFileURL(join(desk.folder, "frame.html")).href);
    await page.frameLocator("iframe").getByText("Ready for a log.").waitFor();
    const [, frame] = page.frames();
    if (frame === undefined) throw new Error("the frame is missing");
    const { place } = await ask(frame, { kind: "openBook", server: null });
    expect(place).toMatchObject({ where: "memory", isKept: false, isPromised: false });
    expect(place.text).toContain("go when the page is closed");
    await ask(frame, { kind: "import", file: "season.book.json", bytes: wholeBook });
    const { list } = await ask(frame, { kind: "list", aircraft: null });
    expect(list.flights).toHaveLength(4);
    await context.close();
  });

  it("works on the page's own thread where no worker starts", async () => {
    const context = await desk.context();
    await context.addInitScript(() => Reflect.deleteProperty(globalThis, "Worker"));
    const { page, problems } = await openPage(context, desk.address);
    expect(await page.locator("#slow").isVisible()).toBe(true);
    await page.locator("#logs-input").setInputFiles(csvFile("one.csv", flightLog()));
    await page.locator("#report .flight").first().waitFor();
    await ask(page, { kind: "import", file: "season.book.json", bytes: wholeBook });
    const { list } = await ask(page, { kind: "list", aircraft: null });
    expect(list).toEqual(await machine.json("list"));
    expect(problems).toEqual([]);
    await context.close();
  });

  it("is a folder over the server: two pages and the command line add at once, and all say the same", async () => {
    const served = await serve(desk.text);
    const home = join(desk.folder, "field");
    mkdirSync(home);
    const address = `${served.origin}/#${served.token}`;
    const contexts = [await desk.context({ offline: false }), await desk.context({ offline: false })];
    const opened = await Promise.all(contexts.map((context) => openPage(context, address)));
    const pages = opened.map(({ page }) => page);
    const command = (words: string) => commandOn(served.folder, home, words.split(" "));
    const logOf = (day: number): string =>
      flightLog({ currentA: 20 + day, startsAt: `2026-06-0${day} 10:00:00` });
    writeFileSync(join(home, "heron.json"), SAMPLE_AIRCRAFT);
    writeFileSync(join(home, "log-5.csv"), logOf(5));
    const add = (page: Page, day: number) =>
      ask(page, {
        ...{ kind: "add", file: `log-${day}.csv`, answers: null, given: NOTHING_GIVEN },
        ...{ aircraft: { text: SAMPLE_AIRCRAFT, file: "heron.json" } },
        ...{ chargedWith: [], isAgain: false, run: `drop ${day}`, bytes: bytesOf(logOf(day)) },
      });
    await Promise.all([
      ...pages.flatMap((page, at) => [add(page, 1 + at), add(page, 3 + at)]),
      command("add log-5.csv --aircraft heron.json"),
    ]);
    await Promise.all(contexts.map((context) => context.close()));
    const context = await desk.context({ offline: false });
    const { page, problems } = await openPage(context, address);
    const { list } = await ask(page, { kind: "list", aircraft: null });
    expect(list.flights).toHaveLength(5);
    expect(list).toEqual(JSON.parse(await command("list --json")));
    const next = { pack: null, ambientC: null, reservePct: null, startPct: null };
    const timer = await ask(page, { kind: "timer", aircraft: null, ...next });
    expect(different(timer.result, JSON.parse(await command("timer --json")))).toEqual([]);
    const trend = await ask(page, { kind: "trend", aircraft: null });
    expect(different(trend.result, JSON.parse(await command("trend --json")))).toEqual([]);
    expect(await ask(page, { kind: "undo" })).toMatchObject({ kind: "undo" });
    expect([...opened.flatMap((one) => one.problems), ...problems]).toEqual([]);
    await context.close();
    expect(served.bugs).toEqual([]);
    await served.end();
  });
});
