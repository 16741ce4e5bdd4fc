import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { MEASURE_UNITS } from "../../src/flight/analysis/index.ts";
import type { FlightCheck } from "../../src/flight/check/index.ts";
import { PACKAGE_FOLDER, runInMemory, type Setting } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT, sampleLog, sampleLogWithoutTime } from "./sampleLog.ts";

const files = {
  "flight.csv": sampleLog(),
  "other.csv": sampleLog(),
  "timeless.csv": sampleLogWithoutTime(),
  "empty.csv": "",
  "heron.json": SAMPLE_AIRCRAFT,
  "wrong.json": SAMPLE_AIRCRAFT.replace("cells", "cels"),
};

function schemaOf(name: string) {
  const text = readFileSync(resolve(PACKAGE_FOLDER, "schemas", name), "utf8");
  return new Ajv({ strict: true }).compile(JSON.parse(text) as object);
}

const isCheck = schemaOf("flight-check.schema.json");
const areChecks = schemaOf("flight-checks.schema.json");
const isColumns = schemaOf("columns.schema.json");

const run = (words: readonly string[], more: Setting = {}) => runInMemory(words, { files, ...more });

async function checkedJson(words: readonly string[], more: Setting = {}): Promise<FlightCheck> {
  const ran = await run([...words, "--json"], more);
  const check = JSON.parse(ran.out) as FlightCheck;
  expect(isCheck(check), JSON.stringify(isCheck.errors)).toBe(true);
  return check;
}

describe("check", () => {
  it("needs no option on a good log and prints at most eight lines", async () => {
    const { exit, out, files: after } = await run(["check", "flight.csv"]);
    expect(exit).toBe(EXIT.done);
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(8);
    expect(out).toMatch(/Next: tallywatt new aircraft\.json\n$/);
    expect(Object.keys(after).sort()).toEqual(Object.keys(files).sort());
  });

  it("prints JSON alone, with every measure in its unit", async () => {
    const check = await checkedJson(["check", "flight.csv", "--aircraft", "heron.json"]);
    expect(check.aircraft).toBe("Heron");
    expect(check.flights.length).toBe(1);
    for (const [name, unit] of Object.entries(MEASURE_UNITS)) {
      expect(check.flights[0]?.measures[name as keyof typeof MEASURE_UNITS]?.unit, name).toBe(unit);
    }
  });

  it("gives the same result whichever way the log and the options come", async () => {
    const plain = await checkedJson(["check", "flight.csv", "--aircraft", "heron.json"]);
    const before = await checkedJson(["--aircraft", "heron.json", "check", "flight.csv"]);
    const equals = await checkedJson(["check", "flight.csv", "--aircraft=heron.json"]);
    const dashed = await run(["check", "--json", "--aircraft", "heron.json", "--", "flight.csv"]);
    expect(JSON.parse(dashed.out)).toEqual(plain);
    const input = await checkedJson(["check", "-", "--aircraft", "heron.json"], {
      input: files["flight.csv"],
    });
    expect(before).toEqual(plain);
    expect(equals).toEqual(plain);
    expect(input).toEqual({ ...plain, log: { ...plain.log, file: "standard input" } });
  });

  it("keeps each log's own result and tells the gravest exit", async () => {
    const words = ["check", "flight.csv", "timeless.csv", "empty.csv", "nothing.csv"];
    const { exit, out } = await run([...words, "--json"]);
    expect(exit).toBe(EXIT.unusable);
    const result = JSON.parse(out) as { readonly checks: readonly FlightCheck[] };
    expect(areChecks(result), JSON.stringify(areChecks.errors)).toBe(true);
    expect(result.checks.map(({ log }) => log.file)).toEqual(words.slice(1));
    expect(result.checks.map(({ flights }) => flights.length)).toEqual([1, 0, 0, 0]);
    expect((await run(["check", "flight.csv", "timeless.csv"])).exit).toBe(EXIT.choice);
  });

  it("asks with the exact command line, and takes the answer", async () => {
    const { exit, out, err } = await run(["check", "timeless.csv", "--aircraft", "heron.json"]);
    expect(exit).toBe(EXIT.choice);
    expect(out).toBe("");
    expect(err).toMatch(/try: tallywatt check timeless\.csv --aircraft heron\.json --rate/);
    const settled = await checkedJson(["check", "timeless.csv", "--rate", "5"]);
    expect(settled.flights.length).toBe(1);
  });

  it("refuses a wrong aircraft file with the key, and prints the same object", async () => {
    const ran = await run(["check", "flight.csv", "--aircraft", "wrong.json", "--json"]);
    expect(ran.exit).toBe(EXIT.unusable);
    expect(ran.err).toContain("Did you mean pack.cells?");
    const check = JSON.parse(ran.out) as FlightCheck;
    expect(isCheck(check)).toBe(true);
    expect(check.flights).toEqual([]);
  });

  it("tells what is wrong with the aircraft file once for several logs", async () => {
    const ran = await run(["check", "flight.csv", "other.csv", "--aircraft", "wrong.json"]);
    expect(ran.err).toMatch(/^wrong\.json line 4: pack\.cels .*\n$/);
  });

  it("lets --cells stand in for the aircraft file", async () => {
    const check = await checkedJson(["check", "flight.csv", "--cells", "8"]);
    expect(check.flights[0]?.measures.minCellV.value).not.toBeNull();
    const without = await checkedJson(["check", "flight.csv"]);
    expect(without.flights[0]?.measures.minCellV.value).toBeNull();
  });

  it("passes no control character of a log on to the terminal", async () => {
    const hostile = sampleLog()
      .replace("time_s,", "time_s,\u001B]0;x\u0007\u202Eevil,")
      .replace(/\n(?=\d)/g, "\n0,");
    const swapped = hostile.replace(/^(time_s),(.*?),/, "$2,$1,");
    for (const words of [
      ["check", "x.csv"],
      ["columns", "x.csv"],
      ["check", "x.csv", "--json"],
    ]) {
      const { out, err } = await runInMemory(words, { files: { "x.csv": swapped } });
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not pass
      expect(out + err).not.toMatch(/[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/);
    }
  });
});

describe("columns", () => {
  it("prints each column with its channel, reason and the options that force it", async () => {
    const { exit, out } = await run(["columns", "flight.csv"]);
    expect(exit).toBe(EXIT.done);
    expect(out).toContain("#3 current_a: current in A.");
    expect(out).toContain("--column current=#3");
  });

  it.each([
    ["flight.csv", EXIT.done],
    ["timeless.csv", EXIT.choice],
    ["empty.csv", EXIT.unusable],
    ["no.csv", EXIT.unusable],
  ])("prints valid JSON for %s", async (log, exit) => {
    const ran = await run(["columns", log, "--json"]);
    expect(ran.exit).toBe(exit);
    expect(isColumns(JSON.parse(ran.out)), JSON.stringify(isColumns.errors)).toBe(true);
  });
});
