import { describe, expect, it } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { isKnown, unknown } from "../../../src/base/quantity/index.ts";
import { identifyControllerHeat } from "../../../src/flight/analysis/controllerHeat.ts";
import {
  fullThrottleSettlesC,
  fullThrottleUntilLimitS,
} from "../../../src/flight/analysis/controllerHeatFullThrottle.ts";
import {
  AIR_AT_LIMIT,
  DEAD_TEMPERATURE,
  limitNotReached,
  riseTooSmall,
} from "../../../src/flight/analysis/identifiedSentences.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";

const TAU_S = 90;
const RISE_PER_A2 = 0.02;
const AIR_C = 18;
const STEP_S = 0.2;

/** A controller heated by the square of the pack current, its probe `lagS` behind, read to 1 degC. */
function heated(rise: number, lagS = 0, seconds = 400): Recording {
  const random = seededRandom(11);
  const rows = Math.round(seconds / STEP_S);
  const current = new Float64Array(rows);
  const temperature = new Float64Array(rows);
  let [own, probe, held, left] = [AIR_C, AIR_C, 0, 100];
  for (let row = 0; row < rows; row++) {
    if (--left <= 0) {
      held = random.between(10, 60);
      left = random.whole(15, 60);
    }
    own += (STEP_S * (AIR_C + rise * held ** 2 - own)) / TAU_S;
    probe += lagS > 0 ? (1 - Math.exp(-STEP_S / lagS)) * (own - probe) : own - probe;
    current[row] = held;
    temperature[row] = Math.round(probe);
  }
  return {
    rows,
    dataLines: rows,
    rowsUsed: rows,
    durationS: (rows - 1) * STEP_S,
    timeS: Float64Array.from({ length: rows }, (_, row) => row * STEP_S),
    channels: new Map([
      ["current", current],
      ["controllerTemperature", temperature],
    ]),
    lineOfRow: (row) => row + 2,
    clockTextOfRow: () => null,
    stepS: STEP_S,
    holes: [],
    repairs: [],
    dead: [],
    notices: [],
  };
}

const AIR = { ambientC: AIR_C, standardDeviationC: 2 };
function heatOf(recording: Recording) {
  const all = { firstRow: 0, lastRow: recording.rows - 1 };
  return identifyControllerHeat(recording, all, NO_FACTS, AIR, null, null);
}

describe("identifyControllerHeat", () => {
  it("finds time constant and rise, the driver, and the air", () => {
    const heat = heatOf(heated(RISE_PER_A2));
    expect(heat.timeConstantS.value! / TAU_S).toBeCloseTo(1, 1);
    expect(heat.risePerA2.value! / RISE_PER_A2).toBeCloseTo(1, 1);
    expect(heat.risePerA2).toMatchObject({ driver: "packCurrent", unit: "degC/A2" });
    expect(Math.abs(heat.ambientC! - AIR_C)).toBeLessThan(1);
    expect(heat.probeLagS).toBeLessThanOrEqual(1);
  });

  it("tells a lagging probe from a slow controller, and how far it reads low at the peak", () => {
    const recording = heated(RISE_PER_A2, 5);
    const heat = heatOf(recording);
    expect(heat.timeConstantS.value! / TAU_S).toBeCloseTo(1, 1);
    expect(heat.probeLagS).toBeGreaterThanOrEqual(4);
    expect(heat.peakLag!.valueC).toBeGreaterThan(0);
    expect(heat.peakLag!.valueC).toBeLessThan(3);
  });

  it("draws a model that stays within a reading's step of the readings", () => {
    const { measured, modelled } = heatOf(heated(RISE_PER_A2)).picture!;
    const model = new Map(modelled.map(([atS, value]) => [atS, value]));
    for (const [atS, value] of measured) expect(Math.abs(value - model.get(atS)!)).toBeLessThan(1);
  });

  it("says why nothing can be told: too small a rise, a sensor that never changes", () => {
    const small = heatOf(heated(0.002));
    expect(small.timeConstantS.value).toBeNull();
    expect((small.timeConstantS as { why: string }).why).toMatch(
      new RegExp(`^${riseTooSmall(0, 8).split("0")[0]}`),
    );
    const dead = heatOf(heated(0));
    expect(dead.risePerA2).toEqual({ value: null, unit: "degC/A2", why: DEAD_TEMPERATURE });
  });

  it("counts the seconds of full throttle to a limit as the exponential does", () => {
    const heat = heatOf(heated(RISE_PER_A2));
    const finalC = AIR_C + heat.risePerA2.value! * 70 ** 2;
    const expected = heat.timeConstantS.value! * Math.log((finalC - AIR_C) / (finalC - 80));
    const air = { ambientC: AIR_C, halfWidthC: 2 };
    const until = fullThrottleUntilLimitS(heat, 70, 80, air);
    expect(until.value).toBeCloseTo(expected, 6);
    const sharp = fullThrottleUntilLimitS(heat, 70, 80, { ...air, halfWidthC: 0 });
    if (!isKnown(until) || !isKnown(sharp)) throw new Error("the limit is reached");
    expect(until.high! - until.low!).toBeGreaterThan(sharp.high! - sharp.low!);
  });

  it("says that full throttle never reaches the limit, and when only the far end of the interval does", () => {
    const heat = heatOf(heated(RISE_PER_A2));
    const air = { ambientC: AIR_C, halfWidthC: 2 };
    expect(fullThrottleUntilLimitS(heat, 30, 80, air)).toEqual(unknown("s", limitNotReached(null)));
    const settles = fullThrottleSettlesC(heat, 30, air);
    expect(settles.value).toBeCloseTo(AIR_C + heat.risePerA2.value! * 900, 9);
    const justAbove = fullThrottleUntilLimitS(heat, 30, settles.value! + 0.5, air);
    expect((justAbove as { why: string }).why).toMatch(/at the far end of the interval it does after \d+ s/);
    expect(fullThrottleUntilLimitS(heat, 30, AIR_C, air)).toEqual(unknown("s", AIR_AT_LIMIT));
  });
});
