import { describe, expect, it } from "vitest";
import { type HeatTrace, numbersText } from "../../../src/flight/analysis/index.ts";
import { heatedTemperatures, throughLag } from "../../../src/physics/index.ts";
import { type TrendFlight, trendsOf } from "../../../src/season/trends/index.ts";
import { coolingNeedsSpeed } from "../../../src/season/trends/sentences.ts";
import { type Random, seededRandom } from "../../generator/index.ts";
import { type EntryChanges, entry, sure } from "../timer/entries.ts";

const SEED = 77;
const STEP_S = 2;
const SPANS = 200;

interface Truth {
  readonly risePerA2: number;
  readonly timeConstantS: number;
  readonly airC: number;
}

/** A flight whose controller heats by the motor current, seen by a probe that lags 3 s and reads whole degrees. */
function traced(index: number, truth: Truth, random: Random, hasSpeed: boolean, changes: EntryChanges = {}) {
  const motorA = legs(random);
  const packA = motorA.map((amps) => 0.02 * amps * amps);
  const constants = {
    timeConstantS: truth.timeConstantS,
    steadyRise: truth.risePerA2,
    ambientC: truth.airC,
    startC: truth.airC + 1,
  };
  const own = heatedTemperatures(
    motorA.map((amps) => amps * amps),
    STEP_S,
    constants,
  );
  const shown = throughLag(own, STEP_S, 3);
  const drivers: HeatTrace["drivers"] = [
    { driver: "packCurrent", currentA: numbersText(packA) },
    hasSpeed
      ? { driver: "motorCurrent", currentA: numbersText(motorA) }
      : { driver: "powerFourThirds", currentA: numbersText(packA) },
  ];
  const heatTrace: HeatTrace = {
    stepS: STEP_S,
    temperatureC: numbersText(Array.from(shown, Math.round)),
    drivers,
  };
  const given = { ambientC: Math.round(truth.airC + random.normal()), ...changes.given };
  const made = entry({ ...changes, given, flight: `flight-${index + 1}`, load: { peakCurrentA: 50 } });
  return { ...made, check: { ...made.check, heatTrace } } as TrendFlight;
}

/** Legs of 4 to 10 s at 25 to 50 A through the motor, nothing at both ends. */
function legs(random: Random): number[] {
  const currentA: number[] = [];
  while (currentA.length < SPANS) {
    const level = currentA.length < 8 || currentA.length > SPANS - 15 ? 0 : random.between(25, 50);
    for (let k = random.whole(2, 5); k > 0; k -= 1) currentA.push(level);
  }
  return currentA.slice(0, SPANS);
}

function book(truth: (index: number) => Partial<Truth>, hasSpeed: boolean, changes: EntryChanges = {}) {
  const random = seededRandom(SEED);
  return Array.from({ length: 12 }, (_, index) => {
    const usual = { risePerA2: 0.04, timeConstantS: 100, airC: random.between(8, 28) };
    return traced(index, { ...usual, ...truth(index) }, random, hasSpeed, changes);
  });
}

const seriesOf = (flights: readonly TrendFlight[], measure: string) =>
  trendsOf(flights, "Plover").series.find((one) => one.measure === measure);

describe(`the controller's heating over flights (seed ${SEED})`, () => {
  it("is solved to a few percent of the truth, with and without speed, when nothing changes", () => {
    const heating = seriesOf(
      book(() => ({}), true),
      "controllerRisePerA2",
    );
    expect(heating?.verdict).toBe("no change shown");
    for (const { value } of heating?.points ?? []) expect(Math.abs(value / 0.04 - 1)).toBeLessThan(0.08);
    expect(
      seriesOf(
        book(() => ({}), false),
        "controllerRisePerA2",
      )?.verdict,
    ).toBe("no change shown");
  });
  it.each([true, false])("shows extra heat of 2 percent a flight, speed logged: %s", (hasSpeed) => {
    const heating = seriesOf(
      book((index) => ({ risePerA2: 0.04 * 1.02 ** index }), hasSpeed),
      "controllerRisePerA2",
    );
    expect(heating?.verdict).toBe("rising");
    const pace = (heating?.slopePerFlight.value ?? 0) / 0.04;
    expect(pace).toBeGreaterThan(0.012);
    expect(pace).toBeLessThan(0.035);
  });
  it("shows lost cooling where speed is logged, and names it", () => {
    const lost = (index: number) => ({ risePerA2: 0.04 * 1.02 ** index, timeConstantS: 100 * 1.02 ** index });
    const heating = seriesOf(book(lost, true), "controllerRisePerA2");
    expect(heating?.verdict).toBe("rising");
    expect(heating?.text).toContain("cooling");
    const cooling = seriesOf(book(lost, false), "controllerTimeConstantS");
    expect(cooling?.verdict).toBe("not judged");
    expect(cooling?.text).toContain(coolingNeedsSpeed());
  });
  it("names the day the limit is met when the hot-day margin closes", () => {
    const measures = { controllerHotDayPeakC: sure(90, "degC") };
    const rising = book((index) => ({ risePerA2: 0.04 * 1.02 ** index }), true, { measures });
    const heating = seriesOf(rising, "controllerRisePerA2");
    // From 55 K above the hot day to 65 K is 18 %: about nine flights at 2 %.
    expect(heating?.crossing?.flights).toBeGreaterThan(4);
    expect(heating?.crossing?.flights).toBeLessThan(15);
    expect(heating?.text).toContain("hot day");
  });
  it("falls back on each flight's own result with fewer than five flights", () => {
    const measures = { controllerRisePerA2: sure(0.041, "degC/A2") };
    const few = book(() => ({}), true, { measures }).slice(0, 4);
    expect(seriesOf(few, "controllerRisePerA2")?.points.map(({ value }) => value)).toEqual(
      Array(4).fill(0.041),
    );
  });
});
