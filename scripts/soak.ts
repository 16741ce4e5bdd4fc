// The reader under fire for long: every family of test/soak over many seeds.
// Run: npm run soak [-- SEEDS]     SEEDS cuts every family short; without it all seeds (hours).
// Resumes where it stopped: .tmp/soak.json keeps the next seed and the faults of each family. Delete it to start anew.
// When done it writes the figures into docs/soak.txt.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { caught, FAMILIES } from "../test/soak/families.ts";

interface Progress {
  next: number;
  trials: number;
  faults: number;
  firstFaults: string[];
}

const root = resolve(import.meta.dirname, "..");
const stateFile = resolve(root, ".tmp/soak.json");
const most = Number(process.argv[2] ?? Number.POSITIVE_INFINITY);
const SAVED_EVERY = 500;
const state = savedState();

function savedState(): Record<string, Progress> {
  try {
    return JSON.parse(readFileSync(stateFile, "utf8")) as Record<string, Progress>;
  } catch {
    return {};
  }
}

function save(): void {
  mkdirSync(resolve(root, ".tmp"), { recursive: true });
  writeFileSync(stateFile, `${JSON.stringify(state, null, 2)}\n`);
}

for (const [name, family] of Object.entries(FAMILIES)) {
  state[name] ??= { next: 0, trials: 0, faults: 0, firstFaults: [] };
  const progress = state[name];
  const end = Math.min(family.many, most);
  while (progress.next < end) {
    const { trials, fault } = caught(family, progress.next);
    progress.trials += trials;
    if (fault !== null) {
      progress.faults++;
      if (progress.firstFaults.length < 20) progress.firstFaults.push(`seed ${progress.next}: ${fault}`);
    }
    progress.next++;
    if (progress.next % SAVED_EVERY === 0) save();
  }
  save();
  console.log(figureLine(name, progress));
  for (const fault of progress.firstFaults) console.log(`  ${fault}`);
}

function figureLine(name: string, { next, trials, faults }: Progress): string {
  return `${name.padEnd(54)} ${String(trials).padStart(9)} trials, seeds 0 to ${next - 1}: ${faults} faults`;
}

const lines = Object.entries(state).flatMap(([name, progress]) => [
  figureLine(name, progress),
  ...progress.firstFaults.map((fault) => `  ${fault}`),
]);
mkdirSync(resolve(root, "docs"), { recursive: true });
writeFileSync(
  resolve(root, "docs/soak.txt"),
  `The reader under fire, last long run (npm run soak). A fault is anything thrown, an infinite or invented number,\nsums that differ without a word, a wrong verdict, or one log that takes 5 s.\n\n${lines.join("\n")}\n`,
);
if (Object.values(state).some(({ faults }) => faults > 0)) process.exitCode = 1;
