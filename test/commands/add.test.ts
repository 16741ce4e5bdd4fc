import { describe, expect, it } from "vitest";
import { parseAircraftFile } from "../../src/aircraft/index.ts";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { bookSentences, type KeptFlight } from "../../src/season/logbook/index.ts";
import { BookMachine, flightLog } from "./bookMachine.ts";

const ONE = flightLog({ startsAt: "2026-06-14 10:00:00" });
const TWO = flightLog({ startsAt: "2026-06-15 09:00:00", currentA: 27 });
const withLogs = (): BookMachine => new BookMachine({ "one.csv": ONE, "two.csv": TWO });
const entryOf = async (machine: BookMachine, flight: string): Promise<KeptFlight> =>
  machine.json<KeptFlight>(`show ${flight}`);

describe("add", () => {
  it("keeps the log byte for byte, the aircraft file, and an entry with the facts it was judged with", async () => {
    const machine = withLogs();
    const out = await machine.ok("add one.csv --aircraft heron.json --pack A --ambient 18 --note calm");
    expect(out).toMatch(/^Added 1 flight of Heron from one\.csv: 2026-06-14-1\.\n/);
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(8);
    const entry = await entryOf(machine, "2026-06-14-1");
    expect(machine.files[`book/${entry.log.path}`]).toBe(ONE);
    expect(machine.files["book/aircraft/Heron.json"]).toBe(machine.files["heron.json"]);
    expect(entry.given).toMatchObject({ pack: "A", ambientC: 18, note: "calm" });
    expect(entry.facts.pack.capacityMah).toBe(5000);
    expect(entry.startsAt).toBe("2026-06-14T10:00:10");
  });

  it("leaves one flight when the same log is added twice, under any name", async () => {
    const machine = withLogs();
    await machine.ok("add one.csv --aircraft heron.json");
    const before = machine.bookFiles();
    machine.files["copy.csv"] = ONE;
    expect(await machine.ok("add one.csv")).toContain("is in the logbook already as 2026-06-14-1");
    expect(await machine.ok("add copy.csv")).toContain("already");
    expect(machine.bookFiles()).toEqual(before);
  });

  it("says that facts of a log that is there already are not taken in, and how to change them", async () => {
    const machine = withLogs();
    await machine.ok("add one.csv --aircraft heron.json --pack A");
    const before = machine.bookFiles();
    const again = await machine.run(["add", "one.csv", "--pack", "B", "--flown", "1:20", "--note", "to be"]);
    const edit = "tallywatt edit 2026-06-14-1 --pack B --flown 1:20 --note";
    expect(again.err).toContain(edit);
    expect(machine.bookFiles()).toEqual(before);
    expect((await machine.run("add one.csv --pack A")).err).toBe("");
    await machine.ok("edit 2026-06-14-1 --pack B --put-back 900");
    expect((await machine.run("add one.csv --pack B --put-back 900")).err).not.toContain("taken in");
    expect((await machine.run("add one.csv --put-back 901")).err).toContain("--put-back 901");
  });

  it("names the nearest pack where one of the name has not flown, and takes it all the same", async () => {
    const machine = withLogs();
    expect((await machine.run("add one.csv --aircraft heron.json --pack Alpha")).err).toBe("");
    const added = await machine.run("add two.csv --pack Aplha");
    expect(added.exit).toBe(EXIT.done);
    expect(added.err).toContain(bookSentences.packUnknown("Aplha", "Alpha", ["Alpha"]));
    expect((await entryOf(machine, "2026-06-15-1")).given.pack).toBe("Aplha");
    expect((await machine.run("timer --pack Alpah")).err).toContain("--pack Alpha");
    expect((await machine.run("timer --pack Alpha")).err).toBe("");
    expect((await machine.run("edit 2026-06-15-1 --pack zzz")).err).toContain("known are Alpha, Aplha");
    expect((await machine.run("edit 2026-06-15-1 --pack Alpha")).err).toBe("");
  });

  it("says which put-back is not used and why, and how many are needed", async () => {
    const machine = withLogs();
    const first = await machine.run("add one.csv --aircraft heron.json --put-back 760");
    expect(first.err).toContain(bookSentences.putBacksNeeded(2));
    const second = await machine.run("add two.csv --put-back 5000");
    expect(second.err).toContain(
      "The put-back of 2026-06-15-1 is not used: the put-back of 5000 mAh does not fit",
    );
    expect(await machine.ok("list")).toContain("The put-back of 2026-06-15-1 is not used");
    const { putBacksLeftOut } = await machine.json<{ putBacksLeftOut: readonly unknown[] }>("list");
    expect(putBacksLeftOut).toHaveLength(1);
  });

  it("asks when a flight looks like one exported again, and --again settles it", async () => {
    const machine = withLogs();
    await machine.ok("add one.csv --aircraft heron.json");
    machine.files["again.csv"] = flightLog({ startsAt: "2026-06-14 10:00:00", decimals: 1 });
    const asked = await machine.run("add again.csv");
    expect(asked.exit).toBe(EXIT.choice);
    expect(asked.err).toContain("looks like flight 2026-06-14-1 exported again");
    expect(asked.err).toContain("try: tallywatt add again.csv --again");
    expect(await machine.flights()).toEqual(["2026-06-14-1"]);
    await machine.ok("add again.csv --again");
    expect(await machine.flights()).toEqual(["2026-06-14-1", "2026-06-14-2"]);
  });

  it("does not ask about the same load at another time of day", async () => {
    const machine = withLogs();
    machine.files["later.csv"] = flightLog({ startsAt: "2026-06-14 10:20:00", decimals: 1 });
    await machine.ok("add one.csv later.csv --aircraft heron.json");
    expect(await machine.flights()).toHaveLength(2);
  });

  it("takes several logs and folders in one call and tells the totals", async () => {
    const machine = new BookMachine({ "logs/a.csv": ONE, "logs/b.CSV": TWO, "logs/readme.md": "x" });
    const out = await machine.ok("add logs --aircraft heron.json");
    expect(out).toContain("2 flights added, 0 logs there already, 0 logs not added.");
    expect(await machine.flights()).toEqual(["2026-06-14-1", "2026-06-15-1"]);
    const none = await new BookMachine({ "empty/readme.md": "x" }).run("add empty --aircraft heron.json");
    expect(none.exit).toBe(EXIT.unusable);
    expect(none.err).toContain("empty holds no log");
  });

  it("clears the line of its progress before it tells something on a terminal", async () => {
    const machine = new BookMachine({ "a.csv": ONE, "b.csv": TWO });
    const { err } = await machine.run("add a.csv b.csv --aircraft heron.json", { isTerminal: true });
    const [clear, first] = ["\r\u001B[K", "\r\u001B[K1 of 2 logs"];
    expect(err).toBe(`${first}${clear}${first}${clear}2 of 2 logs${clear}`);
  });

  it("keeps each log's own result: the others are added, the exit is the gravest", async () => {
    const machine = withLogs();
    machine.files["empty.csv"] = "";
    const ran = await machine.run("add one.csv empty.csv two.csv nothing.csv --aircraft heron.json --json");
    expect(ran.exit).toBe(EXIT.unusable);
    const { logs } = JSON.parse(ran.out) as { logs: { state: string; flights: string[] }[] };
    expect(logs.map(({ state }) => state)).toEqual(["added", "stopped", "added", "stopped"]);
    expect(await machine.flights()).toHaveLength(2);
  });

  it("makes two entries of a log with two flights; their one charge names both", async () => {
    const first = flightLog().trimEnd().split("\n");
    const second = flightLog({ currentA: 30 })
      .trimEnd()
      .split("\n")
      .slice(1)
      .map((line) => line.replace(/^[\d.]+/, (time) => (Number(time) + 1080).toFixed(1)));
    // A quarter of an hour on the ground: too long for one flight.
    const rest = Array.from({ length: 480 }, (_, row) => `${120 + row * 2}.0,33.40,0.30,0.00,25.00`);
    const log = [...first, ...rest, ...second, ""].join("\n");
    const machine = new BookMachine({ "both.csv": log });
    await machine.ok("add both.csv --aircraft heron.json --put-back 2000");
    expect(await machine.flights()).toEqual(["both-1", "both-2"]);
    expect((await entryOf(machine, "both-1")).given.putBackMah).toBeNull();
    const { given, log: kept } = await entryOf(machine, "both-2");
    expect(given).toMatchObject({ putBackMah: 2000, putBackFlights: ["both-1", "both-2"] });
    expect(kept.index).toBe(1);
    const flown = await new BookMachine({ "both.csv": log }).run(
      "add both.csv --aircraft heron.json --flown 1:30",
    );
    expect(flown.exit).toBe(EXIT.choice);
    expect(flown.err).toContain("--flown is for one flight");
  });

  it("takes one put-back of several logs as one charge after all of them", async () => {
    const machine = withLogs();
    await machine.ok("add one.csv two.csv --aircraft heron.json --put-back 1700");
    const [first, second] = await machine.flights();
    expect((await entryOf(machine, first!)).given.putBackMah).toBeNull();
    const { given } = await entryOf(machine, second!);
    expect(given).toMatchObject({ putBackMah: 1700, putBackFlights: [first, second] });
  });

  it("says how to keep a put-back whose last log could not be added", async () => {
    const machine = withLogs();
    machine.files["empty.csv"] = "";
    const { err } = await machine.run("add one.csv empty.csv --aircraft heron.json --put-back 1700");
    const [flight] = await machine.flights();
    expect(err).toContain(`edit ${flight} --put-back 1700`);
  });

  it("orders by the log's clock, else --date, else as added", async () => {
    const machine = withLogs();
    machine.files["plain.csv"] = flightLog({ currentA: 31 });
    machine.files["dated.csv"] = flightLog({ currentA: 35 });
    await machine.ok("add two.csv --aircraft heron.json");
    await machine.ok("add plain.csv");
    await machine.ok("add dated.csv --date 2026-06-01");
    await machine.ok("add one.csv");
    expect(await machine.flights()).toEqual(["2026-06-01-1", "2026-06-14-1", "2026-06-15-1", "plain"]);
  });

  it("asks which aircraft when the book holds several, and takes a name", async () => {
    const machine = withLogs();
    machine.files["tern.json"] = '{ "name": "Tern", "pack": { "cells": 8 } }';
    const none = await machine.run("add one.csv");
    expect(none.exit).toBe(EXIT.choice);
    expect(none.err).toContain("--aircraft FILE");
    await machine.ok("add one.csv --aircraft heron.json");
    await machine.ok("add two.csv --aircraft tern.json");
    machine.files["three.csv"] = flightLog({ currentA: 33 });
    const which = await machine.run("add three.csv");
    expect(which.exit).toBe(EXIT.choice);
    expect(which.err).toContain("tallywatt add three.csv --aircraft Heron");
    const typo = await machine.run("add three.csv --aircraft Herron");
    expect(typo.exit).toBe(EXIT.unusable);
    expect(typo.err).toContain("Did you mean Heron?");
    await machine.ok("add three.csv --aircraft tern");
    expect((await entryOf(machine, "three")).aircraft).toBe("Tern");
  });

  it("takes a changed aircraft file as a new fitting from that flight on", async () => {
    const machine = withLogs();
    await machine.ok("add one.csv --aircraft heron.json");
    machine.files["heron.json"] = String(machine.files["heron.json"]).replace("5000", "6000");
    await machine.ok("add two.csv --aircraft heron.json");
    expect((await entryOf(machine, "2026-06-14-1")).facts.pack.capacityMah).toBe(5000);
    expect((await entryOf(machine, "2026-06-15-1")).facts.pack.capacityMah).toBe(6000);
    expect(machine.files["book/aircraft/Heron.json"]).toBe(machine.files["heron.json"]);
  });

  it("judges a flight by its own propeller", async () => {
    const machine = withLogs();
    machine.files["heron.json"] = `{ "name": "Heron", "pack": { "cells": 8 },
      "propeller": { "diameterIn": 18, "pitchIn": 10, "maxRpm": 8300 } }`;
    await machine.ok("add one.csv --aircraft heron.json --propeller 18.0X8");
    const { facts, given } = await entryOf(machine, "2026-06-14-1");
    expect(given.propeller).toBe("18x8");
    expect(facts.propeller).toMatchObject({ diameterIn: 18, pitchIn: 8, maxRpm: null });
    await machine.ok("add two.csv --propeller 18x10");
    expect((await entryOf(machine, "2026-06-15-1")).facts.propeller.maxRpm).toBe(8300);
  });

  it("asks about a header once: the answer is kept in the aircraft file, its comments too", async () => {
    const unclear = (currentA: number): string =>
      flightLog({ currentA })
        .split("\n")
        .map((line) => line.split(",").slice(1).join(","))
        .join("\n");
    const machine = new BookMachine({ "one.csv": unclear(24), "two.csv": unclear(28) });
    const asked = await machine.run("add one.csv --aircraft heron.json");
    expect(asked.exit).toBe(EXIT.choice);
    expect(asked.err).toContain("try: tallywatt add one.csv --aircraft heron.json --rate");
    await machine.ok("add one.csv --aircraft heron.json --rate 2");
    const text = String(machine.files["book/aircraft/Heron.json"]);
    expect(text).toContain("// invented");
    const parsed = parseAircraftFile(text, "Heron.json");
    expect(parsed.state === "read" && parsed.readings).toMatchObject([{ rateHz: 2, columns: {} }]);
    await machine.ok("add two.csv --aircraft heron.json");
    expect((await entryOf(machine, "two")).check.measures.chargeUsedMah.value).toBeGreaterThan(500);
    expect(machine.files["book/aircraft/Heron.json"]).toBe(text);
  });

  it("changes nothing with --dry-run", async () => {
    const machine = withLogs();
    const out = await machine.ok("add one.csv --aircraft heron.json --dry-run");
    expect(out).toContain("Would add 1 flight");
    expect(machine.bookFiles()).toEqual({});
  });

  it.each([
    ["add", EXIT.usage, "--watch FOLDER"],
    ["add one.csv --propeller big", EXIT.usage, "18x10"],
    ["add one.csv --date 2026-02-30", EXIT.usage, "YYYY-MM-DD"],
    ["add one.csv --flown 5.40", EXIT.usage, "5:40"],
    ["add one.csv --put-back 0", EXIT.usage, "1 to 200000 mAh"],
    ["add --watch nowhere", EXIT.usage, "must be a folder"],
    ["add one.csv --aircraft lost.json", EXIT.unusable, "There is no aircraft file lost.json"],
  ])("%s ends with %i", async (words, exit, text) => {
    const ran = await withLogs().run(words);
    expect(ran.err).toContain(text);
    expect(ran.exit).toBe(exit);
  });

  it("takes no folder of other files for a logbook", async () => {
    const machine = withLogs();
    const ran = await machine.run("add one.csv --aircraft heron.json --book .");
    expect(ran.exit).toBe(EXIT.unusable);
    expect(ran.err).toContain("holds other files");
    expect(Object.keys(machine.files).sort()).toEqual(["heron.json", "one.csv", "two.csv"]);
  });
});
