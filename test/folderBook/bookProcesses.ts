import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { build } from "esbuild";
import { nodeFileSystem, sha256Of } from "../../src/apps/disk/index.ts";
import { folderStore, verifyFolder } from "../../src/apps/folderBook/index.ts";
import { readFlights } from "../../src/season/logbook/index.ts";
import { flightLog } from "../commands/bookMachine.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";
import { BOOK, diskWithBook } from "./bookDisk.ts";

const ROOT = resolve(process.cwd());
const REQUIRE_SHIM =
  'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);';

/** A copy of the command for real processes, apart from dist/, which others may be building. */
export async function buildProgram(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "tallywatt-program-"));
  await bundle("src/apps/commands/main.ts", join(folder, "dist", "tallywatt.js"));
  copyFileSync(join(ROOT, "package.json"), join(folder, "package.json"));
  return join(folder, "dist", "tallywatt.js");
}

async function bundle(entry: string, outfile: string): Promise<void> {
  await build({
    absWorkingDir: ROOT,
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    mainFields: ["module", "main"],
    target: "node20",
    logLevel: "error",
    banner: { js: REQUIRE_SHIM },
  });
}

/** A program that adds logs to the book of a folder. */
export interface Adder {
  start(folder: string, logs: readonly string[]): ChildProcess;
  /** What it prints when it begins to add; null when it says nothing then. */
  readonly ready: string | null;
  /** What it prints once a log is on disk. */
  told(log: string): string;
}

/** The command itself, its analysis included. */
export function commandAdder(program: string): Adder {
  return {
    start: (folder, logs) => start(program, folder, ["add", ...logs, "--aircraft", "heron.json"]),
    ready: null,
    told: (log) => `from ${log}:`,
  };
}

/** A small program with the command's own plan, store, lock and disk. */
export async function workerAdder(folder: string): Promise<Adder> {
  const [program, model] = [join(folder, "worker", "adds.mjs"), join(folder, "worker", "model.json")];
  await bundle("test/folderBook/addingWorker.ts", program);
  const flight = [...(await diskWithBook(1))].find(([path]) => path.startsWith(`${BOOK}/flights/`));
  writeFileSync(model, flight?.[1] ?? "");
  return {
    start: (folder, logs) => start(program, folder, [join(folder, "book"), model, ...logs]),
    ready: "ready",
    told: (log) => `added ${log}`,
  };
}

/** A folder with an aircraft file and logs of different flights; the book is made beside them. */
export function folderOfLogs(logs: number): { readonly folder: string; readonly book: string } {
  const folder = mkdtempSync(join(tmpdir(), "tallywatt-"));
  writeFileSync(join(folder, "heron.json"), SAMPLE_AIRCRAFT);
  for (let at = 0; at < logs; at += 1) {
    // Other clocks and currents: none looks like another exported again.
    const startsAt = new Date(Date.UTC(2026, 4, 1) + at * 7007_000).toISOString().slice(0, 19);
    writeFileSync(join(folder, logName(at)), flightLog({ currentA: 18 + at * 0.05, startsAt }));
  }
  return { folder, book: join(folder, "book") };
}

export function logName(at: number): string {
  return `flight-${String(at).padStart(3, "0")}.csv`;
}

/** Starts a command of tallywatt in the folder; its logbook is the folder "book" there. */
export function start(program: string, folder: string, words: readonly string[]): ChildProcess {
  const env = { ...process.env, TALLYWATT_BOOK: join(folder, "book") };
  return spawn(process.execPath, [program, ...words], {
    cwd: folder,
    env,
    stdio: ["ignore", "pipe", "pipe"],
  });
}

export interface Ended {
  /** Null when it was killed. */
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

export function ended(child: ChildProcess): Promise<Ended> {
  let [out, err] = ["", ""];
  child.stdout?.on("data", (part: Buffer) => {
    out += part.toString();
  });
  child.stderr?.on("data", (part: Buffer) => {
    err += part.toString();
  });
  return new Promise((done) => child.on("close", (exit) => done({ exit, out, err })));
}

/** Names of the logs in the book, and what verify finds damaged. */
export async function bookOf(
  book: string,
): Promise<{ readonly logs: readonly string[]; readonly damage: readonly string[] }> {
  const store = folderStore({ folder: book, fileSystem: nodeFileSystem, onWait: () => {} });
  const { entries } = await store.read((files) => readFlights(files, sha256Of));
  const { problems } = verifyFolder(nodeFileSystem, book);
  const damage = problems.filter(({ isDamage }) => isDamage).map(({ path, what }) => `${path}: ${what}`);
  return { logs: entries.map(({ log }) => log.file), damage };
}

const LOGS_A_CALL = 3;
/** Then a new book is begun: looking through a long one after every call takes its time. */
const CALLS_A_BOOK = 10;
const MOST_CALLS = 3;

export interface Killing {
  readonly killed: number;
  readonly acknowledged: number;
  /** Acknowledged flights that were not in the book later. */
  readonly lost: readonly string[];
  readonly damage: readonly string[];
}

/**
 * Adds three logs a call, kills each call after a random time until so many were killed, and looks at the book after
 * each. A call that came to its end before was none.
 */
export async function killAdding(
  adder: Adder,
  kills: number,
  random: { between(low: number, high: number): number },
): Promise<Killing> {
  const { folder, book } = folderOfLogs(CALLS_A_BOOK * LOGS_A_CALL);
  const told = new Set<string>();
  const [lost, damage] = [new Set<string>(), new Set<string>()];
  let [killed, acknowledged] = [0, 0];
  let usualMs = 1000;
  for (let call = 0; killed < kills && call < MOST_CALLS * kills; call += 1) {
    const turn = call % CALLS_A_BOOK;
    if (turn === 0) {
      rmSync(book, { recursive: true, force: true });
      told.clear();
    }
    const logs = Array.from({ length: LOGS_A_CALL }, (_, at) => logName(turn * LOGS_A_CALL + at));
    const child = adder.start(folder, logs);
    // The first call is left alone: it shows how long one takes.
    const least = adder.ready === null ? 0.3 : 0;
    const killMs = call === 0 ? 60_000 : random.between(least, 1.2) * usualMs;
    const { exit, out, ms } = await killedAfter(child, killMs, adder.ready);
    if (exit === null) killed += 1;
    else usualMs = ms;
    const own = logs.filter((log) => out.includes(adder.told(log)));
    acknowledged += own.length;
    for (const log of own) told.add(log);
    const now = await bookOf(book);
    for (const one of now.damage) damage.add(one);
    for (const log of told) if (!now.logs.includes(log)) lost.add(log);
    // A killed holder's lock ends by itself after its stated time; here the next call need not wait.
    rmSync(`${book}.lock`, { recursive: true, force: true });
  }
  rmSync(folder, { recursive: true, force: true });
  return { killed, acknowledged, lost: [...lost], damage: [...damage] };
}

/** Kills a program so long after its start or, where it says so, after it is ready; `ms` counts from there. */
async function killedAfter(
  child: ChildProcess,
  killMs: number,
  ready: string | null,
): Promise<Ended & { readonly ms: number }> {
  let startedMs = performance.now();
  let timer: NodeJS.Timeout | null = null;
  const begin = (): void => {
    startedMs = performance.now();
    timer ??= setTimeout(() => child.kill("SIGKILL"), killMs);
  };
  if (ready === null) begin();
  else child.stdout?.once("data", begin);
  const end = await ended(child);
  if (timer !== null) clearTimeout(timer);
  return { ...end, ms: performance.now() - startedMs };
}

export interface Racing {
  readonly exits: readonly (number | null)[];
  readonly flights: number;
  readonly damage: readonly string[];
}

/** Several processes add at the same time, each its own logs, so many logs a call, one call after the other. */
export async function raceAdding(
  adder: Adder,
  processes: number,
  adds: number,
  logsACall: number,
): Promise<Racing> {
  const { folder, book } = folderOfLogs(processes * adds);
  const addAll = async (own: number): Promise<readonly (number | null)[]> => {
    const exits: (number | null)[] = [];
    for (let at = 0; at < adds; at += logsACall) {
      const logs = Array.from({ length: logsACall }, (_, one) => logName(own * adds + at + one));
      exits.push((await ended(adder.start(folder, logs))).exit);
    }
    return exits;
  };
  const exits = await Promise.all(Array.from({ length: processes }, (_, own) => addAll(own)));
  const { logs, damage } = await bookOf(book);
  rmSync(folder, { recursive: true, force: true });
  return { exits: exits.flat(), flights: new Set(logs).size, damage };
}
