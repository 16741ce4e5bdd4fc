import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { measuredIn } from "../../src/apps/page/client/logRow.ts";
import { type AddWork, type MeasuredLog, NO_ANSWERS } from "../../src/apps/page/messages.ts";
import { NOTHING_GIVEN } from "../../src/season/logbook/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { PACKAGE_FOLDER } from "../commands/inMemory.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";
import { tenthOfCurrent } from "../support/doubtfulLogs.ts";
import { type Ask, bundledCore } from "./bundledCore.ts";

const HERON = { text: SAMPLE_AIRCRAFT, file: "heron.json" };
const NAMED = { name: "heron" };
const ANY_DAY = { ambientC: null, elevationM: null };
const NEXT = { pack: null, ambientC: null, reservePct: null, startPct: null };
const SIX_X = { diameterIn: 19, pitchIn: 8, blades: null, cells: null, capacityMah: null };

const bytesOf = (text: string): ArrayBuffer => Uint8Array.from(Buffer.from(text)).buffer;
const logOf = (day: number): string =>
  flightLog({ currentA: 20 + day, startsAt: `2026-06-0${day} 10:00:00` });

/** The page's core in the command's engine, each with its own book: the same work must give the same digits. */
describe("the page's core beside the command", () => {
  let startCore: () => Ask;
  let ask: Ask;
  let machine: BookMachine;

  beforeAll(async () => {
    startCore = await bundledCore();
  });
  beforeEach(() => {
    ask = startCore();
    machine = new BookMachine();
  });

  const add = (day: number, more: Partial<AddWork> = {}) =>
    ask({
      ...{ kind: "add", file: `log-${day}.csv`, bytes: bytesOf(logOf(day)), aircraft: HERON, answers: null },
      ...{ given: NOTHING_GIVEN, chargedWith: [], isAgain: false, run: `${day}`, ...more },
    });

  async function addBoth(days: readonly number[]): Promise<void> {
    for (const day of days) {
      machine.files[`log-${day}.csv`] = logOf(day);
      await machine.ok(`add log-${day}.csv --aircraft heron.json`);
      await add(day);
    }
  }

  it("lists, sets the timer, watches trends, plans and swaps to the same last digit", async () => {
    await addBoth([1, 2, 3, 4]);
    const { list, aircraft } = await ask({ kind: "list", aircraft: null });
    expect(list).toEqual(await machine.json("list"));
    expect(aircraft).toEqual([{ name: "Heron", path: "aircraft/Heron.json", text: SAMPLE_AIRCRAFT }]);
    const { result: timer } = await ask({ kind: "timer", aircraft: null, ...NEXT });
    expect(timer).toEqual(await machine.json("timer"));
    const { result: warm } = await ask({
      kind: "timer",
      aircraft: NAMED,
      ...NEXT,
      ambientC: 30,
      reservePct: 30,
    });
    expect(warm).toEqual(await machine.json("timer --ambient 30 --reserve 30"));
    const { result: trend } = await ask({ kind: "trend", aircraft: NAMED });
    expect(trend).toEqual(await machine.json("trend"));
    const { result: plan } = await ask({
      kind: "plan",
      aircraft: HERON,
      withBook: true,
      logs: [],
      conditions: ANY_DAY,
    });
    expect(plan).toEqual(await machine.json("plan --aircraft heron.json"));
    const conditions = { ...ANY_DAY, ambientC: 33, reservePct: null };
    const swap = await ask({
      kind: "swap",
      aircraft: HERON,
      withBook: true,
      logs: [],
      change: SIX_X,
      conditions,
    });
    expect(swap.result).toEqual(
      await machine.json("swap --aircraft heron.json --propeller 19x8 --ambient 33"),
    );
    await machine.ok("season --report=season.html");
    const { result: season } = await ask({ kind: "season", aircraft: null });
    const written = String(machine.files["season.html"]).replace("\n<!-- written by tallywatt -->", "");
    // The page carries the style itself.
    const bodyOf = (text: string): string => text.slice(text.indexOf("<body>"));
    expect(bodyOf(season ?? "") === bodyOf(written), "the season report's bytes").toBe(true);
  });

  it("gives every number of a log with all its fits to the last digit", async () => {
    const [aircraft, log] = ["aircraft.json", "flight-01.csv"].map((name) =>
      readFileSync(resolve(PACKAGE_FOLDER, "fixtures/tern", name), "utf8"),
    );
    machine.files["tern.json"] = aircraft ?? "";
    machine.files["one.csv"] = log ?? "";
    const work = {
      kind: "check",
      file: "one.csv",
      bytes: bytesOf(log ?? ""),
      aircraft: aircraft ?? "",
    } as const;
    const { check } = await ask({ ...work, answers: null, remembered: {} });
    const fitted = ["packResistanceMohm", "controllerTimeConstantS", "propellerPowerCoefficient"] as const;
    for (const name of fitted) expect(check.flights[0]?.measures[name].value, name).not.toBeNull();
    expect(check).toEqual(await machine.json("check one.csv --aircraft tern.json"));
  });

  it("plans and swaps from the logs read on the page as the command does from its logs, and from the book besides", async () => {
    const days = [1, 2, 3];
    for (const day of days) machine.files[`log-${day}.csv`] = logOf(day);
    const measured = async (day: number): Promise<MeasuredLog> => {
      const work = {
        kind: "check",
        file: `log-${day}.csv`,
        aircraft: SAMPLE_AIRCRAFT,
        remembered: {},
      } as const;
      const { check } = await ask({ ...work, bytes: bytesOf(logOf(day)), answers: null });
      return { sha256: check.log.sha256, file: check.log.file, flights: check.flights };
    };
    const logs = await Promise.all(days.map(measured));
    const own = { kind: "swap", aircraft: HERON, withBook: true, change: SIX_X } as const;
    const swap = (some: readonly MeasuredLog[]) =>
      ask({ ...own, logs: some, conditions: { ...ANY_DAY, reservePct: null } });
    const command = "swap --aircraft heron.json --propeller 19x8";
    const named = days.map((day) => `--log log-${day}.csv`).join(" ");
    const ofLogs = await swap(logs);
    const plan = await ask({ kind: "plan", aircraft: HERON, withBook: true, logs, conditions: ANY_DAY });
    expect(plan.result).toEqual(await machine.json(`plan --aircraft heron.json ${named}`));
    const shas = logs.map(({ sha256 }) => sha256);
    expect(plan.flights).toEqual({ inBook: 0, inLogs: 3, leftOut: 0, logs: shas });
    expect(ofLogs.result).toEqual(await machine.json(`${command} ${named}`));
    expect(ofLogs.flights).toEqual({ inBook: 0, inLogs: 3, leftOut: 0, logs: shas });
    expect((await swap([...logs, ...logs])).result, "a log given twice counts once").toEqual(ofLogs.result);
    await addBoth([1, 2]);
    const ofBook = await swap([]);
    expect(ofBook.result).toEqual(await machine.json(command));
    const ofBoth = await swap(logs);
    expect(ofBoth.flights).toEqual({ inBook: 2, inLogs: 1, leftOut: 0, logs: shas.slice(2) });
    expect(ofBoth.result, "the flights are the same, two of them kept").toEqual(ofLogs.result);
    expect(ofBook.result).not.toEqual(ofLogs.result);
    const egret = { text: SAMPLE_AIRCRAFT.replace("Heron", "Egret"), file: "egret.json" };
    const other = await ask({ ...own, aircraft: egret, logs, conditions: { ...ANY_DAY, reservePct: null } });
    expect(other.flights, "what is kept as another aircraft's is not this one's").toEqual({
      inBook: 0,
      inLogs: 1,
      leftOut: 0,
      logs: shas.slice(2),
    });
  });

  it("leaves a log out whose current is not to be believed, as the command does", async () => {
    const tern = readFileSync(resolve(PACKAGE_FOLDER, "fixtures/tern/aircraft.json"), "utf8");
    const log = tenthOfCurrent();
    Object.assign(machine.files, { "tern.json": tern, "tenth.csv": log });
    const work = { kind: "check", file: "tenth.csv", aircraft: tern, remembered: {}, answers: null } as const;
    const measured = measuredIn(await ask({ ...work, bytes: bytesOf(log) }));
    const aircraft = { text: tern, file: "tern.json" };
    const own = { aircraft, withBook: true, logs: [measured] };
    const plan = await ask({ kind: "plan", ...own, conditions: ANY_DAY });
    expect(plan.flights).toEqual({ inBook: 0, inLogs: 0, leftOut: 1, logs: [] });
    expect(plan.result?.remarks[0]).toContain("left out: tenth.csv");
    expect(plan.view).toContain("left out: tenth.csv");
    expect(plan.result).toEqual(await machine.json("plan --aircraft tern.json --log tenth.csv"));
  });

  it("edits, removes, undoes and shows as the command does", async () => {
    await addBoth([1, 2]);
    const changes = { pack: "B", ambientC: 24, putBackMah: 1500 };
    const flights = ["2026-06-01-1", "2026-06-02-1"];
    expect((await ask({ kind: "edit", flights, changes })).flights).toEqual(flights);
    await machine.ok(`edit ${flights.join(" ")} --pack B --ambient 24 --put-back 1500`);
    const show = await ask({ kind: "show", flight: "2026-06-02-1" });
    expect(show.flight).toEqual(await machine.json("show 2026-06-02-1"));
    expect(show.report).toContain("log-2.csv");
    expect((await ask({ kind: "remove", flights: ["2026-06-01-1"] })).text).toContain("Undo brings it back");
    expect((await ask({ kind: "list", aircraft: null })).list.flights).toHaveLength(1);
    await ask({ kind: "undo" });
    expect((await ask({ kind: "list", aircraft: null })).list).toEqual(await machine.json("list"));
    expect((await ask({ kind: "edit", flights: ["2026-06-09-1"], changes })).flights).toEqual([]);
    expect((await ask({ kind: "show", flight: "none" })).why).toContain("no flight none");
  });

  it("adds a log once, undoes a drop of several together, asks whose flight it is", async () => {
    const first = await add(1, { aircraft: null });
    expect(first.outcome).toMatchObject({ state: "stopped", notices: [{ code: "no-aircraft" }] });
    expect((await add(1, { run: "drop" })).outcome.state).toBe("added");
    expect((await add(2, { aircraft: null, run: "drop" })).outcome.state).toBe("added");
    expect((await add(2)).outcome).toEqual({ state: "already", flights: ["2026-06-02-1"] });
    await ask({ kind: "undo" });
    expect((await ask({ kind: "list", aircraft: null })).list.flights).toEqual([]);
  });

  it("keeps an aircraft file and the answers about a header in it", async () => {
    const kept = await ask({ kind: "keepAircraft", ...HERON });
    expect(kept.result?.path).toBe("aircraft/Heron.json");
    const text = logOf(1).replace("pack_v", "u1").replace("current_a", "i1");
    const answers = { ...NO_ANSWERS, columns: { packVoltage: "#2", current: "#3" } };
    const work = { kind: "check", file: "one.csv", aircraft: SAMPLE_AIRCRAFT, remembered: {} } as const;
    const answered = await ask({ ...work, bytes: bytesOf(text), answers });
    expect(answered.check.flights).toHaveLength(1);
    const aircraft = answered.aircraftToKeep ?? "";
    expect(aircraft).toContain('"packVoltage": "#2"');
    const again = await ask({ ...work, aircraft, bytes: bytesOf(text), answers: null });
    expect(again.check.flights).toEqual(answered.check.flights);
    expect(again.aircraftToKeep).toBeNull();
    await ask({ kind: "keepAircraft", text: aircraft, file: "heron.json" });
    const { aircraft: inBook } = await ask({ kind: "list", aircraft: null });
    expect(inBook.map((one) => one.text)).toEqual([aircraft]);
    await ask({ kind: "undo" });
    expect((await ask({ kind: "list", aircraft: null })).aircraft.map((one) => one.text)).toEqual([
      SAMPLE_AIRCRAFT,
    ]);
  });

  it("takes in only a whole book, and says why not", async () => {
    for (const [text, code] of [
      ["a,b\n1,2\n", "book-notABook"],
      ['{"format":"tallywatt/book","version":2}', "book-newer"],
      ['{"format":"tallywatt/book","version":1,"files":{},"logs":{}}', "book-damaged"],
    ] as const) {
      const { result, notices } = await ask({ kind: "import", file: "x.book.json", bytes: bytesOf(text) });
      expect([result, notices[0]?.code]).toEqual([null, code]);
    }
  });
});
