import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import type { PlanResult, SwapResult } from "../../src/flight/judgement/index.ts";
import { PACKAGE_FOLDER, runInMemory } from "./inMemory.ts";

const demo = (name: string) => readFileSync(resolve(PACKAGE_FOLDER, "fixtures/tern", name), "utf8");
const files = {
  "tern.json": demo("aircraft.json"),
  "flight-13.csv": demo("flight-13.csv"),
};
const TERN = ["--aircraft", "tern.json", "--log", "flight-13.csv"];
const isSwap = new Ajv({ strict: true }).compile(
  JSON.parse(readFileSync(resolve(PACKAGE_FOLDER, "schemas/swap.schema.json"), "utf8")) as object,
);

const run = (words: readonly string[]) => runInMemory(["swap", ...words], { files });

async function swapped(words: readonly string[]): Promise<SwapResult> {
  const { exit, out, err } = await run([...words, "--json"]);
  expect(exit, err).toBe(EXIT.done);
  const result = JSON.parse(out) as SwapResult;
  expect(isSwap(result), JSON.stringify(isSwap.errors)).toBe(true);
  return result;
}

describe("swap", () => {
  it("shows before and after side by side in at most a dozen lines", async () => {
    const { exit, out, err } = await run([...TERN, "--propeller", "19x8"]);
    expect(exit).toBe(EXIT.done);
    expect(err).toBe("");
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(12);
    expect(out).toMatch(/Static current .* A .*-> .* A/);
    expect(out).toMatch(/19x8 was not logged: its diameter is 106 % and its pitch 80 % of the logged 18x10/);
    expect(out).toMatch(/Static thrust .* N .*-> .* N .*an estimate from published coefficients/);
    expect(out).toMatch(/Same load, same kind: .*18x10/);
    expect(out).toMatch(/One inch up and one down \(sport\): one step/);
    expect(out).toMatch(/the published data end at [\d.]+ and [\d.]+ inch of pitch there/);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
  });

  it("starts from what plan predicts", async () => {
    const { out } = await runInMemory(["plan", ...TERN, "--json"], { files });
    const { before } = await swapped([...TERN, "--blades", "3"]);
    expect(before.measures).toEqual((JSON.parse(out) as PlanResult).measures);
  });

  it.each<[readonly string[], Partial<SwapResult["change"]>]>([
    [["--propeller", "19x8"], { diameterIn: 19, pitchIn: 8 }],
    [["--propeller", " 18.5 X 9.5 "], { diameterIn: 18.5, pitchIn: 9.5 }],
    [["--blades", "3"], { blades: 3 }],
    [["--cells", "7"], { cells: 7 }],
    [["--capacity", "6000"], { capacityMah: 6000 }],
  ])("understands %j", async (words, change) => {
    const result = await swapped([...TERN, ...words]);
    expect(result.change).toMatchObject(change);
    expect(result.measures).not.toEqual(result.before.measures);
  });

  it("moves the way physics does", async () => {
    const centre = (
      { measures, before }: SwapResult,
      name: "staticCurrentA" | "staticRpm" | "flightTimeS",
    ) => [before.measures[name].value ?? Number.NaN, measures[name].value ?? Number.NaN];
    const fewer = await swapped([...TERN, "--cells", "7"]);
    const [rpmBefore = 0, rpmAfter = 0] = centre(fewer, "staticRpm");
    expect(rpmAfter).toBeLessThan(rpmBefore);
    const larger = await swapped([...TERN, "--capacity", "6000"]);
    const [timeBefore = 0, timeAfter = 0] = centre(larger, "flightTimeS");
    expect(timeAfter).toBeGreaterThan(timeBefore);
    const high = await swapped([...TERN, "--elevation", "2500"]);
    const [ampsBefore = 0, ampsAfter = 0] = centre(high, "staticCurrentA");
    expect(ampsAfter).toBeLessThan(ampsBefore);
  });

  it.each<[readonly string[], number, RegExp]>([
    [[], EXIT.usage, /swap needs a change: --propeller/],
    [["--blades", "3"], EXIT.usage, /swap needs an aircraft file/],
    [[...TERN], EXIT.usage, /swap needs a change/],
    [[...TERN, "--propeller", "big"], EXIT.usage, /--propeller is "big".*--propeller 19x8/],
    [[...TERN, "--propeller", "19x0.1"], EXIT.usage, /--propeller is "19x0\.1"/],
    [[...TERN, "--cells", "7", "--log", "flight-13.csv"], EXIT.usage, /flight-13\.csv is named twice/],
    [[...TERN, "--cells", "0"], EXIT.usage, /--cells is "0"/],
    [[...TERN, "--capacity", "5"], EXIT.usage, /--capacity is "5"/],
  ])("%j ends with %i and says what to do", async (words, exit, err) => {
    const ran = await run(words);
    expect(ran.err).toMatch(err);
    expect(ran.exit).toBe(exit);
    expect(ran.out).toBe("");
  });
});
