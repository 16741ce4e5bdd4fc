import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import type { KeptFlight } from "../../src/season/logbook/index.ts";
import { BookMachine, flightLog } from "./bookMachine.ts";

const DAY = "2026-06-14-1";

async function bookOfThree(): Promise<BookMachine> {
  const machine = new BookMachine({
    "one.csv": flightLog({ startsAt: "2026-06-14 10:00:00" }),
    "two.csv": flightLog({ startsAt: "2026-06-15 10:00:00", currentA: 27 }),
    "three.csv": flightLog({ startsAt: "2026-06-16 10:00:00", currentA: 30 }),
  });
  await machine.ok("add one.csv two.csv three.csv --aircraft heron.json");
  return machine;
}

const entryOf = (machine: BookMachine, flight: string): Promise<KeptFlight> =>
  machine.json<KeptFlight>(`show ${flight}`);

describe("list and show", () => {
  it("name every flight in order, with or without the index", async () => {
    const machine = await bookOfThree();
    const listed = await machine.json("list");
    expect(await machine.flights()).toEqual([DAY, "2026-06-15-1", "2026-06-16-1"]);
    delete machine.files["book/index.txt"];
    expect(await machine.json("list")).toEqual(listed);
    expect((await machine.ok("list")).trimEnd().split("\n")).toHaveLength(3);
  });

  it("say that a book is empty and that a flight is unknown", async () => {
    const empty = await new BookMachine().run("list");
    expect(empty).toMatchObject({ exit: EXIT.done, out: "" });
    expect(empty.err).toContain("holds no flight yet");
    const typo = await (await bookOfThree()).run("show 2026-06-14-2");
    expect(typo.exit).toBe(EXIT.unusable);
    expect(typo.err).toContain(`Did you mean ${DAY}?`);
  });
});

describe("edit", () => {
  it("changes what was said and leaves the measures", async () => {
    const machine = await bookOfThree();
    const before = await entryOf(machine, DAY);
    await machine.ok(`edit ${DAY} --pack B --put-back 700 --flown 1:20`);
    const { given, ...rest } = await entryOf(machine, DAY);
    expect(given).toMatchObject({ pack: "B", putBackMah: 700, putBackFlights: [DAY], flownS: 80 });
    expect(rest).toEqual({ ...before, given: undefined, checksum: undefined });
    await machine.ok(`edit ${DAY} --clear put-back --clear pack`);
    expect((await entryOf(machine, DAY)).given).toMatchObject({ pack: null, putBackMah: null, flownS: 80 });
  });

  it("analyses the log again where a measure rests on the fact", async () => {
    const machine = await bookOfThree();
    const before = (await entryOf(machine, DAY)).check.measures.controllerHotDayPeakC;
    await machine.ok(`edit ${DAY} --ambient 5`);
    const after = (await entryOf(machine, DAY)).check.measures.controllerHotDayPeakC;
    expect(after.value).not.toBe(before.value);
    await machine.ok(`edit ${DAY} --date 2026-01-01`);
    expect((await entryOf(machine, DAY)).startsAt).toBe("2026-06-14T10:00:10");
  });

  it("lets one put-back name several flights", async () => {
    const machine = await bookOfThree();
    await machine.ok(["edit", DAY, "2026-06-15-1", "--put-back", "1500"]);
    expect((await entryOf(machine, DAY)).given.putBackMah).toBeNull();
    expect((await entryOf(machine, "2026-06-15-1")).given.putBackFlights).toEqual([DAY, "2026-06-15-1"]);
    expect(await machine.ok("list")).toContain(`put back 1500 mAh after ${DAY} and 2026-06-15-1`);
    await machine.ok("edit 2026-06-15-1 --put-back 1550");
    const { given } = await entryOf(machine, "2026-06-15-1");
    expect(given).toMatchObject({ putBackMah: 1550, putBackFlights: [DAY, "2026-06-15-1"] });
  });

  it.each([
    [`edit ${DAY}`, EXIT.usage, "--pack A"],
    [`edit ${DAY} --clear packs`, EXIT.usage, "one of pack"],
    ["edit nothing --pack A", EXIT.unusable, "no flight nothing"],
  ])("%s ends with %i", async (words, exit, text) => {
    const ran = await (await bookOfThree()).run(words);
    expect(ran.err).toContain(text);
    expect(ran.exit).toBe(exit);
  });
});

describe("remove and undo", () => {
  it("asks for --yes, says what it removed, and undo brings every byte back", async () => {
    const machine = await bookOfThree();
    const before = machine.bookFiles();
    const asked = await machine.run(`remove ${DAY}`);
    expect(asked.exit).toBe(EXIT.choice);
    expect(asked.err).toContain("--yes");
    const said = await machine.ok(`remove ${DAY} --yes`);
    expect(said).toContain(`Removed ${DAY} (log one.csv).`);
    expect(said).toContain("tallywatt undo");
    expect(await machine.flights()).toHaveLength(2);
    await machine.ok("undo");
    expect({ ...machine.bookFiles(), "book/undo.json": "" }).toEqual({ ...before, "book/undo.json": "" });
    expect(await machine.flights()).toHaveLength(3);
  });

  it("takes a whole run of add back and makes it again", async () => {
    const machine = await bookOfThree();
    const full = machine.bookFiles();
    expect(await machine.ok("undo --dry-run")).toContain("Would undo");
    await machine.ok("undo");
    expect(await machine.flights()).toEqual([]);
    expect(await machine.ok("undo")).toContain("Made again");
    expect({ ...machine.bookFiles(), "book/undo.json": "" }).toEqual({ ...full, "book/undo.json": "" });
  });

  it("restores an edit, an aircraft file and a reading to the byte", async () => {
    const machine = await bookOfThree();
    machine.files["heron.json"] = String(machine.files["heron.json"]).replace("5000", "4400");
    machine.files["four.csv"] = flightLog({ currentA: 33 });
    const before = machine.bookFiles();
    await machine.ok("add four.csv --aircraft heron.json");
    expect(machine.files["book/aircraft/Heron.json"]).not.toBe(before["book/aircraft/Heron.json"]);
    await machine.ok("undo");
    expect(machine.files["book/aircraft/Heron.json"]).toBe(before["book/aircraft/Heron.json"]);
  });

  it("drops a removed log only when the removal can no longer be undone", async () => {
    const machine = await bookOfThree();
    const { path } = (await entryOf(machine, DAY)).log;
    await machine.ok(`remove ${DAY} --yes`);
    expect(machine.files[`book/${path}`]).toBeDefined();
    await machine.ok("edit 2026-06-15-1 --pack A");
    expect(machine.files[`book/${path}`]).toBeUndefined();
    for (const words of ["verify", "verify --json", "recheck"]) {
      const ran = await machine.run(`${words} --book elsewhere`);
      expect(ran.exit).toBe(EXIT.unusable);
      expect(ran.err).toMatch(/^There is no logbook in .*elsewhere/);
    }
    await machine.ok("undo --book elsewhere");
    expect(Object.keys(machine.files).filter((path) => path.startsWith("elsewhere"))).toEqual([]);
    expect((await machine.run("list --aircraft Gull")).err).toMatch(/There is no flight of "Gull"/);
    expect(await machine.ok("verify")).toContain("The logbook is whole: 2 flights, 2 logs");
  });

  it("undoes nothing over an aircraft file that its owner edited", async () => {
    const machine = await bookOfThree();
    machine.files["book/aircraft/Heron.json"] += "\n";
    const ran = await machine.run("undo");
    expect(ran.exit).toBe(EXIT.choice);
    expect(ran.err).toContain("changed by hand");
    expect(await machine.flights()).toHaveLength(3);
  });

  it("has nothing to undo in a new book", async () => {
    const ran = await new BookMachine().run("undo");
    expect(ran.exit).toBe(EXIT.done);
    expect(ran.err).toContain("no change to undo");
  });
});

describe("recheck", () => {
  it("changes nothing with the same release and facts", async () => {
    const machine = await bookOfThree();
    const before = machine.bookFiles();
    expect(await machine.ok("recheck")).toBe("Rechecked: 0 flights changed, 3 as before.\n");
    expect(machine.bookFiles()).toEqual(before);
  });

  it("--refit judges by the aircraft file as it is now and says old -> new", async () => {
    const machine = await bookOfThree();
    const path = "book/aircraft/Heron.json";
    machine.files[path] = String(machine.files[path]).replace("5000", "4000");
    expect(await machine.ok("recheck")).toContain("0 flights changed");
    const said = await machine.ok("recheck --refit --dry-run");
    expect(said).toMatch(/charge left: .* -> /);
    expect((await entryOf(machine, DAY)).facts.pack.capacityMah).toBe(5000);
    await machine.ok("recheck --refit");
    expect((await entryOf(machine, DAY)).facts.pack.capacityMah).toBe(4000);
    await machine.ok("undo");
    expect((await entryOf(machine, DAY)).facts.pack.capacityMah).toBe(5000);
  });

  it("leaves a flight whose log is missing or damaged and says so", async () => {
    const machine = await bookOfThree();
    const { path } = (await entryOf(machine, DAY)).log;
    machine.files[`book/${path}`] += "1";
    expect((await machine.run("recheck")).err).toContain(`${DAY}: its log is damaged`);
    delete machine.files[`book/${path}`];
    expect((await machine.run("recheck")).err).toContain(`${DAY}: its log is missing`);
    const verified = await machine.run("verify");
    expect(verified.exit).toBe(EXIT.unusable);
    expect(verified.out).toContain("tallywatt add LOG");
    await machine.ok("add one.csv");
    expect((await machine.run("verify")).exit).toBe(EXIT.done);
  });
});

describe("export", () => {
  it("writes a table that a spreadsheet cannot run and numbers that stay numbers", async () => {
    const machine = await bookOfThree();
    await machine.ok(["edit", DAY, "--note", '=1+1,"x"', "--pack", "@A"]);
    await machine.ok("export flights.csv");
    const csv = String(machine.files["flights.csv"]);
    expect(csv).toContain(`"'=1+1,""x"""`);
    expect(csv).toContain(",'@A,");
    const { value } = (await entryOf(machine, DAY)).check.measures.chargeUsedMah;
    expect(csv).toContain(`,${value},`);
    expect(csv.split("\r\n")).toHaveLength(5);
    const kept = await machine.run("export flights.csv");
    expect(kept.exit).toBe(EXIT.cannotWrite);
    expect(kept.err).toContain("--force");
  });

  it("writes JSON with every entry", async () => {
    const machine = await bookOfThree();
    await machine.ok("export flights.json");
    const { flights } = JSON.parse(String(machine.files["flights.json"])) as { flights: KeptFlight[] };
    expect(flights[0]).toEqual({ ...(await entryOf(machine, DAY)) });
    expect((await machine.run("export flights.txt")).exit).toBe(EXIT.usage);
  });

  it("writes the whole book as one file, and add takes it in", async () => {
    const machine = await bookOfThree();
    await machine.ok("export all.book.json");
    const fresh = new BookMachine({ "all.book.json": machine.files["all.book.json"] ?? "" });
    expect(await fresh.ok("add all.book.json")).toContain("Took in 3 flights; 0 were there already.");
    const own = (one: BookMachine): object => ({ ...one.bookFiles(), "book/undo.json": "" });
    expect(own(fresh)).toEqual(own(machine));
    expect(await fresh.ok("add all.book.json")).toContain("Took in 0 flights; 3 were there already.");
    await fresh.ok(`remove ${DAY} --yes`);
    expect(await fresh.ok("add all.book.json")).toContain("Took in 1 flight;");
    expect(await fresh.ok("verify")).toContain("The logbook is whole: 3 flights, 3 logs");
  });

  it("refuses a book file with a byte changed", async () => {
    const machine = await bookOfThree();
    await machine.ok("export all.book.json");
    const text = String(machine.files["all.book.json"]).replace("2026-06-14-1", "2026-06-14-9");
    const ran = await new BookMachine({ "all.book.json": text }).run("add all.book.json");
    expect(ran.exit).toBe(EXIT.unusable);
    expect(ran.err).toContain("checksum");
  });
});

describe("timer", () => {
  it("sets a timer in at most eight lines, and says why not with the exit 0", async () => {
    const machine = await bookOfThree();
    const out = await machine.ok("timer --reserve 30");
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(8);
    const setting = await machine.json<{ format: string; flights: number; reservePct: number }>(
      "timer --reserve 30",
    );
    expect(setting).toMatchObject({ format: "tallywatt/timer", flights: 3, reservePct: 30 });
    const none = await machine.json<{ timerS: null; why: string }>("timer --reserve 90");
    expect(none.timerS).toBeNull();
    expect(none.why).not.toBe("");
  });

  it("asks which aircraft in an empty book", async () => {
    expect((await new BookMachine().run("timer")).exit).toBe(EXIT.choice);
  });
});

describe("a book of a newer format", () => {
  it("is not read wrongly and never rewritten", async () => {
    const machine = await bookOfThree();
    machine.files["book/book.json"] = '{"format":"tallywatt/logbook","version":2,"release":"9.1.0"}';
    const before = machine.bookFiles();
    machine.files["four.csv"] = flightLog({ currentA: 33 });
    for (const words of [
      "add four.csv",
      "undo",
      "recheck",
      `edit ${DAY} --pack A`,
      `remove ${DAY} --yes`,
      "list",
    ]) {
      const ran = await machine.run(words);
      expect(ran.exit, words).toBe(EXIT.cannotWrite);
      expect(ran.err).toContain("release 9.1.0 or later");
      expect(machine.bookFiles()).toEqual(before);
    }
  });
});
