// Times the built command against an empty Node process: medians of 5, one table. Run: npm run bench
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { performance } from "node:perf_hooks";

const RUNS = 5;
const root = join(import.meta.dirname, "..");
const command = join(root, "dist", "tallywatt.js");
const log = join(root, "fixtures", "tern", "flight-05.csv");
const aircraft = join(root, "fixtures", "tern", "aircraft.json");

const cases = [
  ["node -e 0", ["-e", "0"]],
  ["tallywatt --version", [command, "--version"]],
  ["tallywatt check --help", [command, "check", "--help"]],
  ["tallywatt columns (demo flight)", [command, "columns", log]],
  ["tallywatt check --json (demo flight)", [command, "check", log, "--aircraft", aircraft, "--json"]],
];

function milliseconds(words) {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, words, { stdio: "ignore" });
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${status}`);
  return performance.now() - start;
}

function median(values) {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];
}

let empty = null;
for (const [name, words] of cases) {
  const time = median(Array.from({ length: RUNS }, () => milliseconds(words)));
  empty ??= time;
  console.log(`${name.padEnd(40)}${time.toFixed(0).padStart(6)} ms   +${(time - empty).toFixed(0)} ms`);
}
