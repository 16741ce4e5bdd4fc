import { beforeAll, describe, expect, it } from "vitest";
import { LOG_STYLES, randomFlightSpec, simulateFlight, writeLog } from "../generator/index.ts";
import { checkBytes } from "./checkSimulated.ts";
import { covers } from "./gap.ts";

const FIRST_SEED = 9001;
const FLIGHTS = 60;

interface Timed {
  readonly seed: number;
  readonly errorS: number;
  readonly isCovered: boolean;
}

/** Volts, amps and temperature only: approaches at taxi power, taxi after landing, some with a touch-and-go. */
function timeFromPower(seed: number): Timed {
  const spec = randomFlightSpec(seed, {
    rateHz: 5,
    perturbed: false,
    channels: ["packVoltage", "current", "controllerTemperature"],
  });
  const { logged, facts, truth } = simulateFlight(spec);
  const { flights } = checkBytes(writeLog(logged, LOG_STYLES.plainWords), JSON.stringify(facts));
  const { flightTimeS } = flights[0]!.measures;
  const trueS = truth.sorties[0]!.flightTimeS!;
  return { seed, errorS: (flightTimeS.value ?? Number.NaN) - trueS, isCovered: covers(flightTimeS, trueS) };
}

describe(`flight time from power alone, ${FLIGHTS} random flights (seeds from ${FIRST_SEED})`, () => {
  let timed: readonly Timed[] = [];
  beforeAll(() => {
    timed = Array.from({ length: FLIGHTS }, (_, index) => timeFromPower(FIRST_SEED + index));
  });

  it("is within 15 s in 19 of 20, and its interval holds the truth every time", () => {
    const late = timed.filter(({ errorS }) => !(Math.abs(errorS) <= 15));
    const list = late.map(({ seed, errorS }) => `${seed}: ${errorS.toFixed(1)} s`).join(", ");
    console.log(`flight time from power alone: beyond 15 s in ${late.length} of ${FLIGHTS} ${list}`);
    expect(late.length / FLIGHTS).toBeLessThanOrEqual(0.05);
    expect(timed.filter(({ isCovered }) => !isCovered)).toEqual([]);
  });
});
