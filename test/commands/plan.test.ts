import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { starterAircraftFile } from "../../src/aircraft/index.ts";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { CHARGE_UNLIKE_REST_VOLTS } from "../../src/flight/analysis/currentDoubtSentences.ts";
import type { PlanResult } from "../../src/flight/judgement/index.ts";
import { clippedCurrent, cutShort, tenthOfCurrent } from "../support/doubtfulLogs.ts";
import { PACKAGE_FOLDER, runInMemory, type Setting } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT, sampleLogWithoutTime } from "./sampleLog.ts";

const demo = (name: string) => readFileSync(resolve(PACKAGE_FOLDER, "fixtures/tern", name), "utf8");
const files = {
  "tern.json": demo("aircraft.json"),
  "heron.json": SAMPLE_AIRCRAFT,
  "wrong.json": SAMPLE_AIRCRAFT.replace("cells", "cels"),
  "flight-13.csv": demo("flight-13.csv"),
  "flight-14.csv": demo("flight-14.csv"),
  "timeless.csv": sampleLogWithoutTime(),
};
const LOGS = ["--log", "flight-13.csv", "--log", "flight-14.csv"];
const isPlan = new Ajv({ strict: true }).compile(
  JSON.parse(readFileSync(resolve(PACKAGE_FOLDER, "schemas/plan.schema.json"), "utf8")) as object,
);

const run = (words: readonly string[], more: Setting = {}) =>
  runInMemory(["plan", ...words], { files, ...more });

async function planned(words: readonly string[]): Promise<PlanResult> {
  const { exit, out, err } = await run([...words, "--json"]);
  expect(exit, err).toBe(EXIT.done);
  const result = JSON.parse(out) as PlanResult;
  expect(isPlan(result), JSON.stringify(isPlan.errors)).toBe(true);
  return result;
}

describe("plan", () => {
  it("says first that it rests on example numbers", async () => {
    const example = { files: { "new.json": starterAircraftFile("New") } };
    const { out } = await run(["--aircraft", "new.json"], example);
    expect(out).toMatch(
      /^This rests on the example numbers still in the aircraft file \(controller, motor, planned\)/m,
    );
    const checked = await runInMemory(["check", "flight-13.csv", "--aircraft", "new.json", "--cells", "8"], {
      files: { ...files, ...example.files },
    });
    expect(checked.out).toMatch(
      /^By the example numbers still in the aircraft file \(controller, motor, planned\): /m,
    );
    expect(checked.err).toMatch(/warning: The aircraft file still holds the example's numbers/);
  });

  it("says when the propeller hardly lifts the aircraft", async () => {
    const small = demo("aircraft.json").replace('"diameterIn": 18', '"diameterIn": 10');
    const { out } = await run(["--aircraft", "small.json"], { files: { "small.json": small } });
    expect(out).toMatch(
      /Static thrust of at most 0\.\d\d of the weight hardly lifts it: check the propeller/,
    );
    expect((await run(["--aircraft", "tern.json"])).out).not.toMatch(/hardly/);
  });

  it("needs no log: from the aircraft file and published ranges, in at most a dozen lines", async () => {
    const { exit, out, err } = await run(["--aircraft", "tern.json"]);
    expect(exit).toBe(EXIT.done);
    expect(err).toBe("");
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(12);
    expect(out).toMatch(/^Tern: predicted from the aircraft file and published ranges; no log given/);
    expect(out).toMatch(/Static current \d+(\.\d+)? A \(/);
    expect(out).toMatch(/Next: tallywatt plan --aircraft tern\.json --log flight\.csv\n$/);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
  });

  it("takes the parts from logs, and tells so in text and JSON", async () => {
    const result = await planned(["--aircraft", "tern.json", ...LOGS]);
    expect(result.basisOf.propellerPowerCoefficient).toBe("measured in 2 flights");
    expect(result.measures.controllerHotDayPeakC.value).not.toBeNull();
    const { out } = await run(["--aircraft", "tern.json", ...LOGS]);
    expect(out).toMatch(/^Tern: predicted from 2 logged runs/);
    expect(out).toMatch(/power coefficient: measured in 2 flights/);
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(12);
  });

  it("judges each predicted number against its limit and the planned one, and says where the plan itself is off", async () => {
    const lines = (await planned(["--aircraft", "tern.json", ...LOGS])).judgements;
    const of = (against: string) => lines.filter((one) => one.against === against).map(({ line }) => line);
    expect(of("limit")).toEqual(
      expect.arrayContaining([
        "staticCurrentA",
        "staticPowerW",
        "staticRpm",
        "minCellV",
        "controllerHotDayPeakC",
      ]),
    );
    expect(of("plan")).toEqual(expect.arrayContaining(["staticCurrentA", "staticRpm", "flightTimeS"]));
    const bold = files["tern.json"].replace('"staticCurrentA": 55', '"staticCurrentA": 90');
    const { out } = await runInMemory(["plan", "--aircraft", "bold.json", ...LOGS], {
      files: { ...files, "bold.json": bold },
    });
    expect(out).toMatch(/The plan itself is off: 90 A planned, .* predicted for static current/);
  });

  it("follows the day and the height asked for", async () => {
    const low = await planned(["--aircraft", "tern.json", "--ambient", "0", "--elevation", "0"]);
    const high = await planned(["--aircraft", "tern.json", "--ambient", "33", "--elevation", "1500"]);
    expect(high.conditions).toEqual({ ambientC: 33, elevationM: 1500, reservePct: 25 });
    expect(high.measures.staticCurrentA.value).toBeLessThan(low.measures.staticCurrentA.value ?? 0);
  });

  it("gives null with the reason for what an aircraft file does not tell", async () => {
    const { measures } = await planned(["--aircraft", "heron.json"]);
    expect(Object.values(measures).every(({ value }) => value === null)).toBe(true);
    const { out } = await run(["--aircraft", "heron.json"]);
    expect(out).toMatch(/Nothing can be predicted/);
    expect(out).toMatch(/the aircraft file gives no propeller\.diameterIn/);
  });

  it.each<[readonly string[], number, RegExp]>([
    [[], EXIT.usage, /plan needs an aircraft file: --aircraft FILE/],
    [["--aircraft", "nothing.json"], EXIT.unusable, /tallywatt new nothing\.json/],
    [["--aircraft", "wrong.json"], EXIT.unusable, /cels/],
    [["--aircraft", "tern.json", "--ambient", "warm"], EXIT.usage, /--ambient is "warm"/],
    [["--aircraft", "tern.json", "--elevation", "9000"], EXIT.usage, /-500 to 6000 metres/],
    [["--aircraft", "tern.json", "--log", "nothing.csv"], EXIT.unusable, /There is no file nothing\.csv/],
    [["--aircraft", "tern.json", "--log", "timeless.csv"], EXIT.choice, /try: tallywatt plan .*--rate/],
    [["--aircraft", "tern.json", "--book"], EXIT.usage, /--book needs a value/],
    [
      ["--aircraft", "tern.json", ...LOGS, "--book", "season"],
      EXIT.usage,
      /from --log or from --book, not from both/,
    ],
  ])("%j ends with %i and says what to do", async (words, exit, err) => {
    const ran = await run(words);
    expect(ran.err).toMatch(err);
    expect(ran.exit).toBe(exit);
    expect(ran.out).toBe("");
    expect(ran.err).not.toMatch(/undefined|NaN|\[object|Error:|\n\s+at /);
  });
});

describe("a log whose current is not to be believed", () => {
  const doubtful = {
    ...files,
    "tenth.csv": tenthOfCurrent(),
    "clipped.csv": clippedCurrent(),
    "cut.csv": cutShort(clippedCurrent()),
  };
  const plannedFrom = async (...logs: readonly string[]) => {
    const words = ["--aircraft", "tern.json", ...logs.flatMap((log) => ["--log", log]), "--json"];
    const { exit, out, err } = await run(words, { files: doubtful });
    expect(exit, err).toBe(EXIT.done);
    return JSON.parse(out) as PlanResult;
  };

  it("does not count, and is named with the reason", async () => {
    const without = await plannedFrom();
    for (const [log, why] of [
      ["tenth.csv", CHARGE_UNLIKE_REST_VOLTS],
      ["clipped.csv", "its charge is only bounded"],
      ["cut.csv", "its charge is only bounded: the current sensor"],
    ] as const) {
      const alone = await plannedFrom(log);
      expect(alone.measures, log).toEqual(without.measures);
      expect(alone.remarks[0], log).toContain(`left out: ${log}, since ${why}`);
    }
    const beside = await plannedFrom("flight-13.csv", "tenth.csv", "clipped.csv");
    const good = await plannedFrom("flight-13.csv");
    expect(beside.measures).toEqual(good.measures);
    expect(beside.remarks).toHaveLength(good.remarks.length + 2);
    expect(good.remarks.join()).not.toContain("left out");
  });

  it("is no measured run in the words either, and a swap leaves it out too", async () => {
    const words = ["--aircraft", "tern.json", "--log", "tenth.csv"];
    const { out } = await run(words, { files: doubtful });
    expect(out).toContain("no logged run counts");
    const swap = await runInMemory(["swap", ...words, "--propeller", "19x8"], { files: doubtful });
    expect(swap.out).toContain("left out: tenth.csv, since");
    expect(swap.out).toContain("no logged run counts");
  });
});
