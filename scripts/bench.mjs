// Times the built command against yardsticks: medians of 5, the cases of a round one after the other, so that ratios
// hold on a busy machine too. Run: npm run bench (-- --long adds the log of 5,000,000 rows). Writes docs/bench.txt.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { writeLog } from "./bench/writeLog.mjs";

const ROUNDS = 5;
const SEASON = 200;
const root = join(import.meta.dirname, "..");
const scripts = join(import.meta.dirname, "bench");
const command = join(root, "dist", "tallywatt.js");
const aircraft = join(root, "fixtures", "tern", "aircraft.json");
const folder = mkdtempSync(join(tmpdir(), "tallywatt-bench-"));
const logOf = (name, rows, rateHz, seed) => {
  const file = join(folder, name);
  writeLog(file, rows, rateHz, seed);
  return file;
};

/** One process from start to end. */
function costOf(words) {
  const start = performance.now();
  const { status, output } = spawnSync(process.execPath, ["-r", join(scripts, "cost.cjs"), ...words], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${status}`);
  return { ms: performance.now() - start, ...JSON.parse(output[3].toString()) };
}

function median(values) {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)];
}

/** Medians of each case; every round runs each case once. */
function measured(cases) {
  const costs = cases.map(() => []);
  for (let round = 0; round < ROUNDS; round++)
    cases.forEach(([, words], at) => {
      costs[at].push(costOf(words));
    });
  return cases.map(([name], at) => ({
    name,
    ...Object.fromEntries(
      ["ms", "cpuMs", "peakMb"].map((key) => [key, median(costs[at].map((cost) => cost[key]))]),
    ),
  }));
}

const lines = [];
function tell(text) {
  lines.push(text);
  console.log(text);
}

function tellTable(title, results) {
  const [yardstick] = results;
  tell(`\n${title}`);
  tell(`${"".padEnd(44)}      ms   CPU ms   peak MB   x ms  x CPU`);
  for (const { name, ms, cpuMs, peakMb } of results) {
    const numbers = [ms, cpuMs, peakMb].map((value) => value.toFixed(0).padStart(9)).join("");
    const ratios = [ms / yardstick.ms, cpuMs / yardstick.cpuMs].map((value) => value.toFixed(2).padStart(7));
    tell(`${name.padEnd(43)}${numbers} ${ratios.join("")}`);
  }
}

function longLog(rows, rateHz) {
  const log = logOf(`${rows}.csv`, rows, rateHz, 1);
  const cases = [
    ["papaparse, whole text, nothing else", [join(scripts, "papaparse.mjs"), log]],
    ["tallywatt check --json", [command, "check", log, "--json"]],
  ];
  if (hasDuckDb) cases.push(["DuckDB, the same sums, two threads", [join(scripts, "duckdb.mjs"), log]]);
  else tell("\nDuckDB is not at hand here: skipped (BENCH_PACKAGES names a folder that has it).");
  tellTable(`a log of ${rows} rows and 12 columns, ${megabytes(log)} MB`, measured(cases));
  return log;
}

const megabytes = (file) => (statSync(file).size / 1e6).toFixed(0);
const hasDuckDb = spawnSync(process.execPath, [join(scripts, "duckdb.mjs")]).status === 0;
try {
  const load = () => loadavg()[0].toFixed(1);
  tell(
    "Last run of npm run bench. x: ratios to the first line of each block, in one run; times mean little where",
  );
  tell("the load is beyond the number of cores.");
  tell(
    `${new Date().toISOString().slice(0, 10)}, Node ${process.version}, ${cpus().length} cores, load ${load()}`,
  );
  const short = logOf("short.csv", 6000, 10, 1);
  tellTable(
    "start and one log",
    measured([
      ["node -e 0", ["-e", "0"]],
      ["tallywatt --version", [command, "--version"]],
      ["tallywatt check --help", [command, "check", "--help"]],
      ["tallywatt check --json, 6,000 rows", [command, "check", short, "--json"]],
      ["the same with an aircraft", [command, "check", short, "--aircraft", aircraft, "--json"]],
    ]),
  );
  const season = Array.from({ length: SEASON }, (_, at) => logOf(`season-${at}.csv`, 6000, 10, at + 1));
  const [all] = measured([
    [`tallywatt check --json, ${SEASON} logs`, [command, "check", ...season, "--json"]],
  ]);
  tellTable(`${SEASON} logs of 6,000 rows: ${((1000 * SEASON) / all.ms).toFixed(0)} logs a second`, [all]);
  const long = longLog(1_000_000, 100);
  const report = join(folder, "report.html");
  costOf([command, "check", long, `--report=${report}`]);
  tell(`\nits report: ${(statSync(report).size / 1000).toFixed(0)} kB`);
  if (process.argv.includes("--long")) longLog(5_000_000, 500);
  tell(`\nload at the end ${load()}`);
  writeFileSync(join(root, "docs", "bench.txt"), `${lines.join("\n")}\n`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
