// Times `timer` and `add` on a logbook of 1,000 flights against `node -e 0`. Build first.
// Run: node scripts/run-typescript.mjs scripts/bench-book.ts [flights]
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { nodeFileSystem, sha256Of } from "../src/apps/disk/index.ts";
import { folderStore } from "../src/apps/folderBook/index.ts";
import { median } from "../src/base/statistics/index.ts";
import {
  type BookIndex,
  entryText,
  flightPath,
  indexTextOf,
  type KeptFlight,
  readKeptFlights,
} from "../src/season/logbook/index.ts";

const FLIGHTS = Number(process.argv[2] ?? 1000);
const RUNS = 15;
const root = resolve(import.meta.dirname, "..");
const program = join(root, "dist", "tallywatt.js");
const tern = (name: string): string => join(root, "fixtures", "tern", name);
const folder = mkdtempSync(join(tmpdir(), "tallywatt-bench-"));
const book = join(folder, "book");

function run(words: readonly string[]): void {
  execFileSync(process.execPath, words, { stdio: ["ignore", "ignore", "ignore"] });
}

function timeOf(work: () => void): number {
  const start = process.hrtime.bigint();
  work();
  return Number(process.hrtime.bigint() - start) / 1e6;
}

/** One turn after the other, so that a busy minute of the machine falls on all alike; the median of each, ms. */
function mediansOf<Name extends string>(
  works: Readonly<Record<Name, (turn: number) => void>>,
): Readonly<Record<Name, number>> {
  const names = Object.keys(works) as Name[];
  const turns = Array.from({ length: RUNS }, (_, turn) =>
    names.map((name) => timeOf(() => works[name](turn))),
  );
  return Object.fromEntries(
    names.map((name, at) => [name, median(turns.map((times) => times[at]!))]),
  ) as Record<Name, number>;
}

/** The flights of the demo season over and over, each with a log of its own. */
async function grow(): Promise<void> {
  const store = folderStore({ folder: book, fileSystem: nodeFileSystem, onWait: () => {} });
  await store.change((files) => {
    const { entries } = readKeptFlights(files, sha256Of);
    const copies = Array.from({ length: FLIGHTS - entries.length }, (_, at): KeptFlight => {
      const entry = entries[at % entries.length]!;
      const log = { ...entry.log, path: `logs/copy-${at}.csv`, sha256: sha256Of(String(at)) };
      return { ...entry, flight: `copy-${at}`, sequence: 100 + at, log };
    });
    const index: BookIndex = { entries: [...entries, ...copies], damaged: [] };
    return {
      logs: [],
      files: copies.map((entry) => ({ path: flightPath(entry.flight), text: entryText(entry, sha256Of) })),
      index: indexTextOf(index, sha256Of),
      dropLogs: [],
      result: null,
    };
  });
}

try {
  const aircraft = ["--aircraft", tern("aircraft.json"), "--book", book];
  run([program, "add", ...["11", "12", "13"].map((number) => tern(`flight-${number}.csv`)), ...aircraft]);
  await grow();
  const log = readFileSync(tern("flight-09.csv"), "utf8");
  const logs = Array.from({ length: RUNS }, (_, turn) => {
    const path = join(folder, `new-${turn}.csv`);
    writeFileSync(path, `${log}# ${turn}\n`);
    return path;
  });
  const times = mediansOf({
    nodeMs: () => run(["-e", "0"]),
    versionMs: () => run([program, "--version"]),
    checkMs: () => run([program, "check", logs[0]!, "--aircraft", tern("aircraft.json")]),
    timerMs: () => run([program, "timer", "--book", book]),
    listMs: () => run([program, "list", "--book", book]),
    addMs: (turn) => run([program, "add", logs[turn]!, "--again", "--book", book]),
  });
  const { nodeMs, versionMs, checkMs, timerMs, addMs } = times;
  console.log(`${FLIGHTS} flights, medians of ${RUNS} turns, ms`);
  console.log(JSON.stringify(times, (_, value) => (typeof value === "number" ? Math.round(value) : value)));
  console.log(
    `timer ${(timerMs / nodeMs).toFixed(2)} x node; add less the check's own analysis ${((addMs - (checkMs - versionMs)) / nodeMs).toFixed(2)} x node`,
  );
} finally {
  if (process.env.KEEP_BOOK === undefined) rmSync(folder, { recursive: true, force: true });
}
