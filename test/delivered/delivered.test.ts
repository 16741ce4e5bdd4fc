import { spawnSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hasBrowser, openBrowser } from "../browser/browser.ts";
import { ensureBuilt } from "../support/built.ts";

/**
 * The package as a user gets it: packed, put into an empty folder outside the repository, run from there. No registry
 * is asked: the command needs no other package, and those that the library names are linked from this checkout.
 */
const ROOT = resolve(import.meta.dirname, "../..");
const folder = mkdtempSync(join(tmpdir(), "tallywatt-delivered-"));
const installed = join(folder, "node_modules", "tallywatt");
const log = join(installed, "fixtures/tern/flight-01.csv");
const aircraft = join(installed, "fixtures/tern/aircraft.json");

function run(program: string, words: readonly string[], cwd = folder) {
  const { status, stdout, stderr } = spawnSync(program, words, {
    cwd,
    encoding: "utf8",
    env: { PATH: process.env.PATH, HOME: folder, NO_COLOR: "1" },
  });
  return { status, out: stdout, err: stderr };
}

const tallywatt = (...words: string[]) => run(join(folder, "node_modules/.bin/tallywatt"), words);

function unpack(): void {
  const packed = run("npm", ["pack", "--ignore-scripts", "--pack-destination", folder], ROOT);
  if (packed.status !== 0) throw new Error(packed.err);
  const archive = readdirSync(folder).find((name) => name.endsWith(".tgz"))!;
  mkdirSync(installed, { recursive: true });
  const unpacked = run("tar", ["-xzf", archive, "-C", installed, "--strip-components=1"]);
  if (unpacked.status !== 0) throw new Error(unpacked.err);
  mkdirSync(join(folder, "node_modules/.bin"));
  const { bin } = packageFile();
  symlinkSync(join(installed, bin.tallywatt), join(folder, "node_modules/.bin/tallywatt"));
}

function packageFile() {
  return JSON.parse(readFileSync(join(installed, "package.json"), "utf8")) as {
    readonly bin: { readonly tallywatt: string };
    readonly dependencies: Readonly<Record<string, string>>;
    readonly exports: Readonly<Record<string, string | { readonly types: string; readonly default: string }>>;
  };
}

beforeAll(() => {
  ensureBuilt();
  unpack();
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the delivered command, with no other package beside it", () => {
  it("checks a log", () => {
    const ran = tallywatt("check", log, "--aircraft", aircraft, "--json");
    expect(ran.status, ran.err).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({ format: "tallywatt/flight-check", aircraft: "Tern" });
  });

  it("keeps a logbook and sets a timer from it", () => {
    const logs = ["flight-01.csv", "flight-02.csv"].map((name) => join(installed, "fixtures/tern", name));
    const added = tallywatt("add", ...logs, "--book", "book", "--aircraft", aircraft);
    expect(added.status, added.err).toBe(0);
    const timer = tallywatt("timer", "--book", "book", "--json");
    expect(timer.status, timer.err).toBe(0);
    expect(JSON.parse(timer.out)).toMatchObject({ format: "tallywatt/timer", aircraft: "Tern" });
  });

  it("writes the report and the starter aircraft file", () => {
    const report = tallywatt("check", log, "--aircraft", aircraft, "--report=report.html");
    expect(report.status, report.err).toBe(0);
    expect(readFileSync(join(folder, "report.html"), "utf8")).toMatch(/^<!doctype html>/i);
    expect(tallywatt("new", "mine.json").status).toBe(0);
    expect(tallywatt("check", log, "--aircraft", "mine.json").status).toBe(0);
  });

  it("saves the page, which reads a log by itself", async () => {
    expect(tallywatt("page", "--save", "page.html").status).toBe(0);
    if (!hasBrowser()) return;
    const browser = await openBrowser();
    try {
      const page = await (await browser.newContext({ offline: true })).newPage();
      await page.goto(pathToFileURL(join(folder, "page.html")).href);
      await page.getByText("Ready for a log.").waitFor();
      await page.locator("#logs-input").setInputFiles(log);
      await page.locator("#report .flight").first().waitFor();
    } finally {
      await browser.close();
    }
  });
});

const CONSUMER = `
import { checkLog, type FlightCheck, NO_BUDGET, NO_FACTS, NO_READING_OPTIONS, type Quantity } from "tallywatt";
import { readFileSync } from "node:fs";

const { check } = checkLog(new Uint8Array(readFileSync(process.argv[2] ?? "")), {
  file: "log.csv", sha256: "", aircraft: null, facts: NO_FACTS, budget: NO_BUDGET,
  readings: [], options: NO_READING_OPTIONS, day: { ambientC: null, startPct: null },
});
const typed: FlightCheck = check;
const used: Quantity | undefined = typed.flights[0]?.measures.chargeUsedMah;
// @ts-expect-error a quantity is no number
export const wrong: number = used;
console.log(JSON.stringify(used));
`;

describe("the delivered library, with the packages it names", () => {
  beforeAll(() => {
    for (const name of [...Object.keys(packageFile().dependencies), "@types/node"]) {
      const link = join(folder, "node_modules", name);
      mkdirSync(dirname(link), { recursive: true });
      symlinkSync(join(ROOT, "node_modules", name), link);
    }
    writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
    writeFileSync(join(folder, "consumer.ts"), CONSUMER);
  });

  it("has every file that its package.json promises", () => {
    const paths = Object.values(packageFile().exports).flatMap((each) =>
      typeof each === "string" ? [each] : [each.types, each.default],
    );
    for (const path of paths) expect(readFileSync(join(installed, path)).length, path).toBeGreaterThan(0);
  });

  it("is imported with its types, strictly, and gives what the command gives", () => {
    const options = ["--strict", "--target", "es2023", "--module", "nodenext", "--types", "node"];
    const compiled = run(join(ROOT, "node_modules/.bin/tsc"), ["--ignoreConfig", ...options, "consumer.ts"]);
    expect(compiled.out + compiled.err).toBe("");
    const ran = run(process.execPath, ["consumer.js", log]);
    expect(ran.status, ran.err).toBe(0);
    const json = tallywatt("check", log, "--json").out;
    const checked = JSON.parse(json) as { flights: { measures: { chargeUsedMah: unknown } }[] };
    expect(JSON.parse(ran.out)).toEqual(checked.flights[0]!.measures.chargeUsedMah);
  });
});
