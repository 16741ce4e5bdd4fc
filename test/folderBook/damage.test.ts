import { beforeAll, describe, expect, it } from "vitest";
import { sha256Of } from "../../src/apps/disk/index.ts";
import { folderStore, verifyFolder } from "../../src/apps/folderBook/index.ts";
import {
  type BookIndex,
  type LogbookEntry,
  readBriefFlights,
  readFlights,
  readKeptFlights,
  UnusableBookError,
} from "../../src/season/logbook/index.ts";
import { BOOK, diskWithBook, type Files, runOn } from "./bookDisk.ts";
import { MemoryDisk } from "./memoryDisk.ts";

const isSoak = process.env.TALLYWATT_SOAK !== undefined;
/** Each damage has the whole book read three times. */
const FLIGHTS = isSoak ? 2 : 4;
/** In the suite every so many bytes is flipped and cut; with TALLYWATT_SOAK each. */
const STEP = isSoak ? 1 : 149;

/** Small files are looked at more closely. */
const SMALL_BYTES = 1000;

let book: Files;
/** What each flight's numbers are, by name. */
let numbers: ReadonlyMap<string, string>;
let inBrief: ReadonlyMap<string, string>;

beforeAll(async () => {
  book = (await runOn(await diskWithBook(FLIGHTS), "edit 2026-05-01-1 --note x")).disk.files();
  numbers = await flightsOf(book, true);
  inBrief = await briefFlightsOf(book);
});

/** What a timer reads of each flight: of the front of the index where that fits. */
async function briefFlightsOf(files: Files): Promise<ReadonlyMap<string, string>> {
  const store = folderStore({ folder: BOOK, fileSystem: new MemoryDisk(files), onWait: () => {} });
  const { entries } = await store.read((texts) => readBriefFlights(texts, sha256Of));
  return new Map(
    entries.map(({ flight, aircraft, given, facts, check, load }) => {
      const { kind, complete, measures } = check;
      const { flightTimeS, chargeUsedMah, peakCurrentA, controllerHotDayPeakC } = measures;
      const values = [flightTimeS, chargeUsedMah, peakCurrentA, controllerHotDayPeakC];
      return [flight, JSON.stringify([aircraft, given, facts, kind, complete, values, load])];
    }),
  );
}

/** The figures of each flight as the book gives them, through the index or from the flights' own files. */
async function flightsOf(files: Files, isQuick: boolean): Promise<ReadonlyMap<string, string>> {
  const { entries } = await indexOf(files, isQuick);
  return new Map(entries.map((entry) => [entry.flight, JSON.stringify(figures(entry))]));
}

function figures({ check, load, given, facts }: LogbookEntry): unknown {
  const { kind, complete, measures } = check;
  const values = Object.entries(measures).sort(([one], [other]) => (one < other ? -1 : 1));
  return { kind, complete, values, load, given, facts };
}

function indexOf(files: Files, isQuick: boolean): Promise<BookIndex> {
  const store = folderStore({ folder: BOOK, fileSystem: new MemoryDisk(files), onWait: () => {} });
  return store.read((texts) => (isQuick ? readFlights : readKeptFlights)(texts, sha256Of));
}

function withBytes(path: string, bytes: Uint8Array): Files {
  return new Map([...book, [path, bytes]]);
}

/** True when verify names a damage or the store refuses the book; false when it finds nothing. */
function isNoticed(files: Files, path: string): boolean {
  try {
    const { problems } = verifyFolder(new MemoryDisk(files), BOOK);
    return problems.some((one) => `${BOOK}/${one.path}` === path);
  } catch (error) {
    if (error instanceof UnusableBookError) return true;
    throw error;
  }
}

/** Every number that the damaged book still gives must be the true one. */
async function expectNoWrongNumber(files: Files, what: string): Promise<void> {
  for (const isQuick of [true, false]) {
    let found: ReadonlyMap<string, string>;
    try {
      found = await flightsOf(files, isQuick);
    } catch (error) {
      if (error instanceof UnusableBookError) return;
      throw error;
    }
    for (const [flight, text] of found) expect(text, `${what}: ${flight}`).toBe(numbers.get(flight));
  }
  for (const [flight, text] of await briefFlightsOf(files)) {
    expect(text, `${what}: ${flight}, in brief`).toBe(inBrief.get(flight));
  }
}

describe("a damaged book", { timeout: 7_200_000 }, () => {
  it("notices every flipped byte, or gives the same numbers", async () => {
    let flips = 0;
    let unnoticed = 0;
    for (const [path, bytes] of book) {
      if (!path.startsWith(`${BOOK}/`)) continue;
      const step = bytes.length < SMALL_BYTES ? Math.ceil(STEP / 100) : STEP;
      for (let at = (flips * 31) % step; at < bytes.length; at += step) {
        const flipped = bytes.slice();
        flipped[at] = (flipped[at] ?? 0) ^ (1 << (flips % 8));
        const files = withBytes(path, flipped);
        const what = `bit ${flips % 8} of byte ${at} of ${path}`;
        await expectNoWrongNumber(files, what);
        if (!isNoticed(files, path)) unnoticed += 1;
        flips += 1;
      }
    }
    console.log(`${flips} flips: ${flips - unnoticed} noticed, ${unnoticed} harmless`);
    expect(flips).toBeGreaterThan(500);
    // Blanks, comments of an aircraft file and the release's name in book.json may change unnoticed.
    expect(unnoticed / flips).toBeLessThan(0.2);
  });

  it("notices every cut file; all other flights stay readable", async () => {
    let cuts = 0;
    for (const [path, bytes] of book) {
      if (!path.startsWith(`${BOOK}/`)) continue;
      for (let length = cuts % 2; length < bytes.length; length += STEP) {
        const files = withBytes(path, bytes.slice(0, length));
        await expectNoWrongNumber(files, `${path} cut at ${length}`);
        if (path.startsWith(`${BOOK}/flights/`)) {
          const { entries, damaged } = await indexOf(files, false);
          const isOnlyBlankLost = bytes.slice(length).every((byte) => byte <= 32);
          expect(entries.length + damaged.length).toBe(FLIGHTS);
          expect(entries.length, `${path} cut at ${length}`).toBe(isOnlyBlankLost ? FLIGHTS : FLIGHTS - 1);
        }
        if (path.startsWith(`${BOOK}/logs/`)) expect(isNoticed(files, path)).toBe(true);
        cuts += 1;
      }
    }
    expect(cuts).toBeGreaterThan(500);
  });

  it("shows damaged flights and goes on with the others", async () => {
    const path = `${BOOK}/flights/2026-05-02-1.json`;
    const text = new TextDecoder().decode(book.get(path)).replace('"value": ', '"value": 1');
    const files = new Map(withBytes(path, new TextEncoder().encode(text)));
    files.delete(`${BOOK}/index.txt`);
    const { entries, damaged } = await indexOf(files, true);
    expect(entries).toHaveLength(FLIGHTS - 1);
    expect(damaged).toMatchObject([{ path: "flights/2026-05-02-1.json" }]);
    const added = await runOn(files, "add new.csv");
    expect(added.exit).toBe(0);
    const after = await indexOf(added.disk.files(), true);
    expect(after.entries).toHaveLength(FLIGHTS);
    expect(after.damaged).toHaveLength(1);
    const removed = await runOn(added.disk.files(), "remove 2026-05-02-1 --yes");
    expect(verifyFolder(removed.disk, BOOK).problems.filter(({ isDamage }) => isDamage)).toEqual([]);
  });

  it("reads the front of an index whose other part is damaged, and nothing from a damaged front", async () => {
    const path = `${BOOK}/index.txt`;
    const index = book.get(path) ?? new Uint8Array();
    const damagedAt = (at: number): Files => withBytes(path, index.with(at, index[at]! ^ 1));
    const callsFor = async (files: Files): Promise<readonly string[]> => {
      const disk = new MemoryDisk(files);
      const store = folderStore({ folder: BOOK, fileSystem: disk, onWait: () => {} });
      await store.read((texts) => readBriefFlights(texts, sha256Of));
      return disk.log.filter((call) => call.startsWith(`read ${BOOK}/flights/`));
    };
    expect(await callsFor(book)).toEqual([]);
    expect(await callsFor(damagedAt(index.length - 10))).toEqual([]);
    expect(await callsFor(damagedAt(2000))).toHaveLength(FLIGHTS);
  });

  it("adds a log rightly beside an index that knows too much or too little", async () => {
    const added = (await runOn(book, "add new.csv")).disk.files();
    const index = `${BOOK}/index.txt`;
    const tooLittle = new Map([...added, [index, book.get(index) ?? new Uint8Array()]]);
    const again = await runOn(tooLittle, "add new.csv");
    expect(again.exit).toBe(0);
    expect((await indexOf(again.disk.files(), false)).entries).toHaveLength(FLIGHTS + 1);
    const tooMuch = new Map([...book, [index, added.get(index) ?? new Uint8Array()]]);
    const anew = await runOn(tooMuch, "add new.csv");
    expect((await indexOf(anew.disk.files(), false)).entries).toHaveLength(FLIGHTS + 1);
    expect((await indexOf(anew.disk.files(), true)).entries).toHaveLength(FLIGHTS + 1);
  });

  it("does not trust an index that a changed flight outdates, and heals it", async () => {
    const other = (await runOn(book, "edit 2026-05-02-1 --note longer-note")).disk.files();
    const path = `${BOOK}/flights/2026-05-02-1.json`;
    const files = withBytes(path, other.get(path) ?? new Uint8Array());
    expect(
      (await indexOf(files, true)).entries.find(({ flight }) => flight === "2026-05-02-1")?.given.note,
    ).toBe("longer-note");
    const healed = (await runOn(files, "edit 2026-05-01-1 --note y")).disk;
    expect(verifyFolder(healed, BOOK).problems).toEqual([]);
  });
});
