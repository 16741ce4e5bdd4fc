import { runCommandLine } from "../../src/apps/commands/run.ts";
import { sha256Of } from "../../src/apps/disk/index.ts";
import { folderStore, verifyFolder } from "../../src/apps/folderBook/index.ts";
import { readFlights, readKeptFlights } from "../../src/season/logbook/index.ts";
import { BookMachine, type FlightPlan, flightLog } from "../commands/bookMachine.ts";
import { ioOn, WORK_FOLDER } from "../commands/inMemory.ts";
import { type Fault, MemoryDisk } from "./memoryDisk.ts";

export const BOOK = `${WORK_FOLDER}/book`;
export type Files = ReadonlyMap<string, Uint8Array>;

const ROWS_A_ROW = 4;
const COLUMNS = 3;

/** A store keeps bytes whatever flew: few rows of time, volts and current are analysed in no time. */
function shortLog(plan: FlightPlan): string {
  const lines = flightLog(plan).split("\n");
  const kept = lines.filter((_, line) => line % ROWS_A_ROW === 0);
  return `${kept.map((line) => line.split(",").slice(0, COLUMNS).join(",")).join("\n")}\n`;
}

/** A disk with a book of some flights, and a log that is not in it yet. */
export async function diskWithBook(flights: number): Promise<Files> {
  const logs = Object.fromEntries(
    Array.from({ length: flights }, (_, at) => [
      `kept/${at}.csv`,
      shortLog({ currentA: 20 + at, startsAt: `2026-05-${String(at + 1).padStart(2, "0")} 10:00:00` }),
    ]),
  );
  const machine = new BookMachine({ ...logs, "new.csv": shortLog({ currentA: 40 }) });
  await machine.ok("add kept --aircraft heron.json --pack A");
  const encoder = new TextEncoder();
  return new Map(
    Object.entries(machine.files).map(([name, content]) => [
      `${WORK_FOLDER}/${name}`,
      typeof content === "string" ? encoder.encode(content) : content,
    ]),
  );
}

export interface Outcome {
  readonly disk: MemoryDisk;
  /** Null: the power was lost. */
  readonly exit: number | null;
}

/** A disk on which another program finishes its change just before this one gets the lock. */
class ContestedDisk extends MemoryDisk {
  readonly #other: Files;

  constructor(files: Files, fault: Fault | null, other: Files) {
    super(files, fault);
    this.#other = other;
  }

  override alone<Result>(folder: string, onWait: unknown, work: () => Promise<Result>): Promise<Result> {
    this.become(this.#other);
    return super.alone(folder, onWait, work);
  }
}

/**
 * Runs a command on a disk that fails where the fault says.
 * @param other what another program makes of the files meanwhile
 */
export async function runOn(
  files: Files,
  words: string,
  fault: Fault | null = null,
  other: Files | null = null,
): Promise<Outcome> {
  const disk = other === null ? new MemoryDisk(files, fault) : new ContestedDisk(files, fault, other);
  const exit = await runCommandLine([...words.split(" "), "--book", "book"], ioOn(disk));
  return { disk, exit: disk.isPowerLost ? null : exit };
}

/** What the book says, its undo record apart; throws when its index and its flights disagree. */
export async function stateOf(files: Files): Promise<string> {
  const disk = new MemoryDisk(files);
  const store = folderStore({ folder: BOOK, fileSystem: disk, onWait: () => {} });
  return store.read((texts) => {
    const kept = readKeptFlights(texts, sha256Of);
    const quick = readFlights(texts, sha256Of);
    const names = (index: { entries: readonly { flight: string }[] }): string =>
      index.entries.map(({ flight }) => flight).join();
    if (names(kept) !== names(quick))
      throw new Error(`index says ${names(quick)}, flights are ${names(kept)}`);
    return JSON.stringify([...texts].filter(([path]) => path !== "undo.json").sort());
  });
}

const recovered = new Map<string, string>();

/**
 * The state after the next command that writes has recovered the book; throws when a file is damaged. The same
 * files recover the same way, and many faults leave the same files.
 */
export async function recoveredState(files: Files): Promise<string> {
  const key = sha256Of([...files].map(([path, bytes]) => `${path} ${sha256Of(bytes)}`).join("\n"));
  const state = recovered.get(key) ?? (await recover(files));
  recovered.set(key, state);
  return state;
}

async function recover(files: Files): Promise<string> {
  const seen = await stateOf(files);
  const disk = new MemoryDisk(files);
  const store = folderStore({ folder: BOOK, fileSystem: disk, onWait: () => {} });
  await store.change(() => ({ logs: [], files: [], index: null, dropLogs: [], result: null }));
  const damage = verifyFolder(disk, BOOK).problems.filter(({ isDamage }) => isDamage);
  if (damage.length > 0) throw new Error(`damaged: ${JSON.stringify(damage)}`);
  const state = await stateOf(disk.files());
  if (state !== seen) throw new Error("a reader saw another book than recovery made");
  return state;
}
