import { describe, expect, it } from "vitest";
import { identifyMotorLoad } from "../../src/flight/analysis/motorLoad.ts";
import type { Cause, WrongSetting } from "../../src/flight/analysis/wrongSetting.ts";
import type { Departures } from "../generator/index.ts";
import { randomFlight } from "./randomFlight.ts";

const FIRST_SEED = 301;
const FLIGHTS = 24;

function found(seed: number, departures: Partial<Departures>) {
  const flight = randomFlight(seed, { departures, script: { flightS: 60 }, rateHz: 5 });
  const { recording, facts, day, plateau } = flight;
  const all = { firstRow: 0, lastRow: recording.rows - 1 };
  return identifyMotorLoad(recording, all, facts, day, plateau, null, null);
}

const speed = (factor: number) => (cause: Cause) =>
  cause.kind === "speedSetting" && Math.abs(cause.factor / factor - 1) < 0.01;
const isKv = (cause: Cause) => cause.kind === "kv";

const WRONG: readonly [string, Partial<Departures>, (cause: Cause) => boolean][] = [
  ["speed times 2", { speedFactor: 2 }, speed(2)],
  ["speed times 7", { speedFactor: 7 }, speed(7)],
  ["speed times 3/2", { speedFactor: 1.5 }, speed(1.5)],
  ["speed times 1/2", { speedFactor: 0.5 }, speed(0.5)],
  ["speed times 1/7", { speedFactor: 1 / 7 }, speed(1 / 7)],
  ["kv stated 20 % high", { kvFactor: 1.2 }, isKv],
  ["kv stated 20 % low", { kvFactor: 0.8 }, isKv],
];

describe(`wrong settings, ${FLIGHTS} random flights each (seeds from ${FIRST_SEED})`, () => {
  it.each(WRONG)("%s: the cause is named or among those listed, never another alone", (name, off, isIt) => {
    const seeds = Array.from({ length: FLIGHTS }, (_, k) => FIRST_SEED + k);
    const wrong = seeds.map((seed) => ({ seed, setting: found(seed, off).wrongSetting }));
    const named = wrong.filter(({ setting }) => setting?.cause);
    console.log(`${name}: named in ${named.length} of ${FLIGHTS}, else listed`);
    const isRight = ({ setting }: { setting: WrongSetting | null }) =>
      setting !== null && (setting.cause ? isIt(setting.cause) : setting.candidates.some(isIt));
    expect(wrong.filter((one) => !isRight(one)).map(({ seed }) => seed)).toEqual([]);
  });

  it("says nothing against right settings, nor against constants off by their usual spread", () => {
    for (let seed = FIRST_SEED; seed < FIRST_SEED + FLIGHTS; seed++) {
      expect(found(seed, {}).wrongSetting, `seed ${seed}`).toBeNull();
      expect(found(seed, { constantsOff: true }).wrongSetting, `seed ${seed}, constants off`).toBeNull();
    }
  });

  it("leaves the coefficient null under a wrong setting", () => {
    const { propellerPowerCoefficient, motorEfficiencyPct } = found(FIRST_SEED, { speedFactor: 2 });
    expect([propellerPowerCoefficient.value, motorEfficiencyPct.value]).toEqual([null, null]);
  });
});
