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

const ROOT = resolve(process.cwd());
const REQUIRE_SHIM =
  'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);';

/** A copy of the command for real processes, apart from dist/, which others may be building. */
export async function buildProgram(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "tallywatt-program-"));
  await build({
    absWorkingDir: ROOT,
    entryPoints: ["src/apps/commands/main.ts"],
    outfile: join(folder, "dist", "tallywatt.js"),
    bundle: true,
    format: "esm",
    platform: "node",
    mainFields: ["module", "main"],
    target: "node20",
    logLevel: "error",
    banner: { js: REQUIRE_SHIM },
  });
  copyFileSync(join(ROOT, "package.json"), join(folder, "package.json"));
  return join(folder, "dist", "tallywatt.js");
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

export interface Killing {
  readonly killed: number;
  readonly acknowledged: number;
  /** Acknowledged flights that were not in the book later. */
  readonly lost: readonly string[];
  readonly damage: readonly string[];
}

/** Adds three logs a call, kills each call after a random time, and looks at the book after each. */
export async function killAdding(
  program: string,
  kills: number,
  random: { between(low: number, high: number): number },
): Promise<Killing> {
  const { folder, book } = folderOfLogs(kills * LOGS_A_CALL);
  const told = new Set<string>();
  const [lost, damage] = [new Set<string>(), new Set<string>()];
  let killed = 0;
  let usualMs = 1000;
  for (let call = 0; call < kills; call += 1) {
    const logs = Array.from({ length: LOGS_A_CALL }, (_, at) => logName(call * LOGS_A_CALL + at));
    const startedMs = performance.now();
    const child = start(program, folder, ["add", ...logs, "--aircraft", "heron.json"]);
    // The first call is left alone: it shows how long one takes.
    const killMs = call === 0 ? 60_000 : random.between(0.3, 1.05) * usualMs;
    const timer = setTimeout(() => child.kill("SIGKILL"), killMs);
    const { exit, out } = await ended(child);
    clearTimeout(timer);
    if (exit === null) killed += 1;
    else usualMs = performance.now() - startedMs;
    for (const log of logs) if (out.includes(`from ${log}:`)) told.add(log);
    const now = await bookOf(book);
    for (const one of now.damage) damage.add(one);
    for (const log of told) if (!now.logs.includes(log)) lost.add(log);
    // A killed holder's lock ends by itself after its stated time; here the next call need not wait.
    rmSync(`${book}.lock`, { recursive: true, force: true });
  }
  rmSync(folder, { recursive: true, force: true });
  return { killed, acknowledged: told.size, lost: [...lost], damage: [...damage] };
}

export interface Racing {
  readonly exits: readonly (number | null)[];
  readonly flights: number;
  readonly damage: readonly string[];
}

/** Several processes add at the same time, each its own logs one call after the other. */
export async function raceAdding(program: string, processes: number, adds: number): Promise<Racing> {
  const { folder, book } = folderOfLogs(processes * adds);
  const addAll = async (own: number): Promise<readonly (number | null)[]> => {
    const exits: (number | null)[] = [];
    for (let at = 0; at < adds; at += 1) {
      const words = ["add", logName(own * adds + at), "--aircraft", "heron.json"];
      exits.push((await ended(start(program, folder, words))).exit);
    }
    return exits;
  };
  const exits = await Promise.all(Array.from({ length: processes }, (_, own) => addAll(own)));
  const { logs, damage } = await bookOf(book);
  rmSync(folder, { recursive: true, force: true });
  return { exits: exits.flat(), flights: new Set(logs).size, damage };
}
