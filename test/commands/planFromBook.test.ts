import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import type { PlanResult, SwapResult } from "../../src/flight/judgement/index.ts";
import { BookMachine } from "./bookMachine.ts";
import { PACKAGE_FOLDER } from "./inMemory.ts";

const demo = (name: string) => readFileSync(resolve(PACKAGE_FOLDER, "fixtures/tern", name), "utf8");

describe("plan and swap from a logbook", () => {
  const machine = new BookMachine({ "tern.json": demo("aircraft.json") });
  const json = async <Result>(words: string): Promise<Result> => {
    const { exit, out, err } = await machine.run(words);
    expect(exit, err).toBe(EXIT.done);
    return JSON.parse(out) as Result;
  };

  beforeAll(async () => {
    machine.files["flight-12.csv"] = demo("flight-12.csv");
    machine.files["flight-13.csv"] = demo("flight-13.csv");
    machine.files["flight-14.csv"] = demo("flight-14.csv");
    for (const [flight, pack] of [
      [12, "A"],
      [13, "B"],
      [14, "B"],
    ] as const) {
      const { err, exit } = await machine.run(`add flight-${flight}.csv --aircraft tern.json --pack ${pack}`);
      expect(exit, err).toBe(EXIT.done);
    }
  });

  it("takes every part from the book's flights and says in how many", async () => {
    const { basisOf } = await json<PlanResult>("plan --book book --json");
    const inFlights = "measured in 3 flights";
    expect(basisOf).toMatchObject({
      propellerPowerCoefficient: inFlights,
      packResistanceMohm: `${inFlights} on 2 packs`,
      kv: inFlights,
      cruiseShare: inFlights,
      groundChargeMah: inFlights,
      controllerRise: inFlights,
    });
  });

  it("gives what the same logs give, whether the book is named or lies where it usually does", async () => {
    const logs = "--log flight-12.csv --log flight-13.csv --log flight-14.csv";
    const named = await json<PlanResult>("plan --aircraft Tern --book book --json");
    const usual = await json<PlanResult>("plan --aircraft tern.json --json");
    const fromLogs = await json<PlanResult>(`plan --aircraft tern.json ${logs} --json`);
    expect(usual).toEqual(named);
    // Only the pack differs: from named packs its interval spans both.
    for (const name of ["staticRpm", "staticCurrentA", "controllerHotDayPeakC"] as const) {
      expect(named.measures[name].value! / fromLogs.measures[name].value!).toBeCloseTo(1, 2);
    }
  });

  it("swaps from the book, with the aircraft left out where there is one", async () => {
    const { basisOf } = await json<SwapResult>("swap --book book --propeller 19x9 --json");
    expect(basisOf.propellerPowerCoefficient).toContain("measured in 3 flights");
    const { out } = await machine.run("swap --book book --propeller 19x9");
    expect(out).toMatch(/Next: tallywatt plan --book book\n$/);
  });

  it("says so where the book holds no flight of the aircraft, and asks which of several", async () => {
    const empty = await machine.run("plan --aircraft tern.json --book elsewhere");
    expect(empty.exit).toBe(EXIT.done);
    expect(empty.err).toContain("The logbook holds no flight of Tern");
    const unknown = await machine.run("plan --aircraft Heron --book book");
    expect(unknown.exit).not.toBe(EXIT.done);
    expect(unknown.out).toBe("");
  });
});
