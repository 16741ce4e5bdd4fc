import { describe, expect, it } from "vitest";
import type { FileSystem } from "../../src/apps/disk/index.ts";
import { folderStore } from "../../src/apps/folderBook/index.ts";
import type { BookChange, Store } from "../../src/season/logbook/index.ts";
import { type Fault, MemoryDisk, PowerLost, survivors } from "./memoryDisk.ts";

const FOLDER = "/book";
const text = (content: string): Uint8Array => new TextEncoder().encode(content);
const BEFORE = new Map([
  [`${FOLDER}/book.json`, text('{"format":"tallywatt/logbook","version":1}')],
  [`${FOLDER}/flights/one.json`, text('{"flight":1}')],
  [`${FOLDER}/flights/two.json`, text('{"flight":2}')],
  [`${FOLDER}/logs/one.csv`, text("time,volts\n0,25\n")],
]);
/** One command that adds, changes and deletes files and keeps a log. */
const NO_CHANGE: BookChange<null> = { logs: [], files: [], index: null, dropLogs: [], result: null };
const CHANGE: BookChange<string> = {
  logs: [{ path: "logs/three.csv", bytes: text("time,volts\n0,26\n1,25\n") }],
  files: [
    { path: "flights/three.json", text: '{"flight":3}' },
    { path: "flights/one.json", text: '{"flight":1,"note":"edited"}' },
    { path: "flights/two.json", text: null },
    { path: "undo.json", text: '{"change":1}' },
  ],
  index: '{"flights":2}',
  dropLogs: [],
  result: "added",
};

function storeOn(fileSystem: FileSystem): Store {
  return folderStore({
    folder: FOLDER,
    fileSystem,
    onWait: () => undefined,
  });
}

async function stateOf(fileSystem: FileSystem): Promise<string> {
  return storeOn(fileSystem).read((files) => JSON.stringify([...files].sort()));
}

async function change(disk: MemoryDisk): Promise<"done" | "failed" | "crashed"> {
  try {
    await storeOn(disk).change(() => CHANGE);
    return "done";
  } catch (error) {
    return error instanceof PowerLost ? "crashed" : "failed";
  }
}

async function expectedStates(): Promise<{ before: string; after: string; calls: number; log: string[] }> {
  const disk = new MemoryDisk(BEFORE);
  const before = await stateOf(new MemoryDisk(BEFORE));
  expect(await change(disk)).toBe("done");
  return { before, after: await stateOf(new MemoryDisk(disk.files())), calls: disk.calls, log: disk.log };
}

/** A disk after the power came back, recovered by the next command that writes. */
async function recovered(files: ReadonlyMap<string, Uint8Array>): Promise<string> {
  const disk = new MemoryDisk(files);
  const seenByReader = await stateOf(disk);
  await storeOn(disk).change(() => NO_CHANGE);
  const seenAfter = await stateOf(disk);
  expect(seenByReader).toBe(seenAfter);
  return seenAfter;
}

describe("a logbook folder whose disk fails", () => {
  it("writes, syncs, renames and syncs the folder in that order before the change is told", async () => {
    const { log } = await expectedStates();
    const journal = log.indexOf(`rename ${FOLDER}/journal.json`);
    expect(log.slice(journal - 4, journal + 3)).toEqual([
      `open ${FOLDER}/journal.json.writing`,
      "write",
      "fsync",
      `size ${FOLDER}/journal.json.writing`,
      `rename ${FOLDER}/journal.json`,
      `open folder ${FOLDER}`,
      "fsync",
    ]);
  });

  it.each(["EIO", "ENOSPC", "EACCES", "SHORT"] as const)(
    "is as before or as after when any call gives %s, once or for ever",
    async (code) => {
      const { before, after, calls } = await expectedStates();
      for (const isForEver of [false, true]) {
        for (let atCall = 0; atCall <= calls; atCall += 1) {
          const fault: Fault = { atCall, code, isForEver };
          const disk = new MemoryDisk(BEFORE, fault);
          const outcome = await change(disk);
          const state = await recovered(disk.files());
          const allowed = outcome === "done" ? [after] : [before, after];
          expect(allowed, `${code} ${isForEver ? "for ever from" : "at"} call ${atCall}`).toContain(state);
        }
      }
    },
  );

  it("is as before or as after a power loss at any call, also during recovery; nothing told is lost", async () => {
    const { before, after, calls } = await expectedStates();
    let states = 0;
    // Many losses leave the same files, which recover the same way.
    const known = new Map<string, string>();
    for (let atCall = 0; atCall <= calls; atCall += 1) {
      const disk = new MemoryDisk(BEFORE, { atCall, code: "POWER", isForEver: true });
      const outcome = await change(disk);
      for (const files of survivors(disk.crash())) {
        const key = JSON.stringify([...files].map(([path, bytes]) => [path, [...bytes]]).sort());
        const state = known.get(key) ?? (await recovered(files));
        expect(outcome === "done" ? [after] : [before, after], `power lost at call ${atCall}`).toContain(
          state,
        );
        states += 1 + (known.has(key) ? 0 : await crashDuringRecovery(files, state));
        known.set(key, state);
      }
    }
    console.log(`crash states examined: ${states}`);
    expect(states).toBeGreaterThan(1000);
  });
});

/** The power goes again at each step of the recovery: the book still comes to the same state. */
async function crashDuringRecovery(
  files: ReadonlyMap<string, Uint8Array>,
  expected: string,
): Promise<number> {
  const whole = new MemoryDisk(files);
  await storeOn(whole).change(() => NO_CHANGE);
  let states = 0;
  const step = Math.max(1, Math.floor(whole.calls / 8));
  for (let atCall = 0; atCall < whole.calls; atCall += step) {
    const disk = new MemoryDisk(files, { atCall, code: "POWER", isForEver: true });
    await storeOn(disk)
      .change(() => NO_CHANGE)
      .catch(() => undefined);
    for (const left of survivors(disk.crash(), 3)) {
      states += 1;
      expect(await recovered(left), `power lost again at call ${atCall} of recovery`).toBe(expected);
    }
  }
  return states;
}
