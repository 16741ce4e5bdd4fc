import { beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { diskWithBook, type Files, recoveredState, runOn, stateOf } from "./bookDisk.ts";
import { survivors } from "./memoryDisk.ts";

/** With TALLYWATT_SOAK set every call of every command is tried with every fault. */
const isSoak = process.env.TALLYWATT_SOAK !== undefined;
/** Every command that changes a book, and the step from one call tried to the next. */
const COMMANDS: readonly (readonly [string, number])[] = [
  ["add new.csv", 1],
  ["edit 2026-05-01-1 2026-05-02-1 --pack B --put-back 1500", 1],
  ["remove 2026-05-01-1 --yes", 1],
  ["undo", 1],
  ["recheck --refit", isSoak ? 1 : 13],
];
/** The first fault is tried at each call, the others at some. */
const FAULTS = [
  ["EIO", 1],
  ["ENOSPC", isSoak ? 1 : 6],
  ["EACCES", isSoak ? 1 : 7],
  ["SHORT", isSoak ? 1 : 4],
] as const;

let book: Files;
beforeAll(async () => {
  const files = new Map(await diskWithBook(3));
  // An aircraft file that changed, so that a recheck has something to change.
  const path = "/field/book/aircraft/Heron.json";
  const text = new TextDecoder().decode(files.get(path)).replace('"continuousA": 100', '"continuousA": 90');
  const { disk } = await runOn(files, "edit 2026-05-03-1 --note x");
  book = new Map([...disk.files(), [path, new TextEncoder().encode(text)]]);
});

async function endStates(words: string): Promise<{ before: string; after: string; calls: number }> {
  const { disk, exit } = await runOn(book, words);
  expect(exit, words).toBe(EXIT.done);
  const [before, after] = [await stateOf(book), await stateOf(disk.files())];
  expect(after, words).not.toBe(before);
  return { before, after, calls: disk.calls };
}

describe("every command that changes a book", { timeout: 7_200_000 }, () => {
  it.each(COMMANDS)(
    "%s: any call failing leaves the book before or after, and says so",
    async (words, step) => {
      const { before, after, calls } = await endStates(words);
      let runs = 0;
      for (const [code, share] of FAULTS) {
        for (const isForEver of [false, true]) {
          for (let atCall = 0; atCall <= calls; atCall += step * share) {
            const where = `${words}: ${code} ${isForEver ? "for ever from" : "at"} call ${atCall} of ${calls}`;
            const { disk, exit } = await runOn(book, words, { atCall, code, isForEver });
            expect([EXIT.done, EXIT.unusable, EXIT.choice, EXIT.cannotWrite], where).toContain(exit);
            const state = await recoveredState(disk.files());
            // A recheck that cannot read a log leaves that flight, says so and ends well.
            const isTold = exit === EXIT.done && !words.startsWith("recheck");
            expect(isTold ? [after] : [before, after], where).toContain(state);
            runs += 1;
          }
        }
      }
      expect(runs).toBeGreaterThan(20);
    },
  );

  it.each(COMMANDS)("%s: a power loss at any call leaves the book before or after", async (words, step) => {
    const { before, after, calls } = await endStates(words);
    let states = 0;
    for (let atCall = 0; atCall <= calls; atCall += step) {
      const { disk, exit } = await runOn(book, words, { atCall, code: "POWER", isForEver: true });
      for (const files of survivors(disk.crash(), 5)) {
        states += 1;
        const state = await recoveredState(files);
        expect(exit === EXIT.done ? [after] : [before, after], `${words} at call ${atCall}`).toContain(state);
      }
    }
    expect(states).toBeGreaterThan(30);
  });
});

describe("an edit of several flights of which another program changes one meanwhile", () => {
  const words = "edit 2026-05-01-1 2026-05-02-1 --pack B --put-back 1500";
  let other: Files;
  beforeAll(async () => {
    other = (await runOn(book, "edit 2026-05-02-1 --note theirs")).disk.files();
  });

  it("changes none of them and says so", async () => {
    const { disk, exit } = await runOn(book, words, null, other);
    expect(exit).toBe(EXIT.cannotWrite);
    expect(await stateOf(disk.files())).toBe(await stateOf(other));
    const last = await runOn(disk.files(), "undo");
    expect(await stateOf(last.disk.files())).toBe(await stateOf(book));
  });

  it("changes none whatever call fails, and after a power loss at any call", async () => {
    const [before, after] = [await stateOf(book), await stateOf(other)];
    const { calls } = (await runOn(book, words, null, other)).disk;
    for (let atCall = 0; atCall <= calls; atCall += 1) {
      for (const code of ["EIO", "POWER"] as const) {
        const fault = { atCall, code, isForEver: code === "POWER" };
        const { disk, exit } = await runOn(book, words, fault, other);
        const where = `${code} at call ${atCall}`;
        expect([EXIT.cannotWrite, EXIT.unusable, null], where).toContain(exit);
        for (const files of code === "POWER" ? survivors(disk.crash(), 5) : [disk.files()]) {
          expect([before, after], where).toContain(await recoveredState(files));
        }
      }
    }
  });
});
