import { describe, expect, it } from "vitest";
import { isKnown, type Quantity, quantityText } from "../../../src/base/quantity/index.ts";
import {
  knownPartsFrom,
  NOTHING_KNOWN,
  type PlanMeasure,
  predictPlan,
  predictSwap,
} from "../../../src/flight/prediction/index.ts";
import { loggedFlights, TRUE_LOGS, type TrueLog, ternWith } from "./demoSeason.ts";

const CONDITIONS = { ambientC: null, elevationM: null, reservePct: 25 };
const NO_CHANGE = { diameterIn: null, pitchIn: null, blades: null, cells: null, capacityMah: null };

const logsWith = (propeller: TrueLog["propeller"]) => TRUE_LOGS.filter((log) => log.propeller === propeller);
const flightsWith = (propeller: TrueLog["propeller"]) => logsWith(propeller).flatMap(loggedFlights);
const isInside = ({ low, high }: Quantity & { low?: unknown; high?: unknown }, value: number) =>
  typeof low === "number" && typeof high === "number" && low <= value && value <= high;

/** "staticCurrentA 56.5 outside 45 ± 5 A" for each value that is not covered. */
function missed(name: PlanMeasure, predicted: Quantity, values: readonly number[]): string[] {
  return values
    .filter((value) => !isInside(predicted, value))
    .map((value) => `${name} ${value} outside ${quantityText(predicted)}`);
}

describe("the demo aircraft", () => {
  const before = flightsWith("18x8");
  const later = flightsWith("18x10");
  const { facts } = ternWith("18x10");

  it("is planned from its own logs with intervals that hold the true static point", () => {
    const { measures } = predictPlan(facts, knownPartsFrom(later), CONDITIONS);
    const truths = logsWith("18x10").flatMap(({ flights }) => flights);
    const static_ = (["staticCurrentA", "staticPowerW", "staticRpm"] as const).flatMap((name) =>
      missed(
        name,
        measures[name],
        truths.flatMap((flight) => flight[name] ?? []),
      ),
    );
    expect(static_).toEqual([]);
  });

  it("is planned from the aircraft file alone with intervals that hold every true static value", () => {
    const { measures } = predictPlan(facts, NOTHING_KNOWN, CONDITIONS);
    const truths = logsWith("18x10").flatMap(({ flights }) => flights);
    const names = ["staticCurrentA", "staticPowerW", "staticRpm"] as const;
    const values = (name: (typeof names)[number]) => truths.flatMap((flight) => flight[name] ?? []);
    expect(names.flatMap((name) => values(name)).length).toBeGreaterThan(10);
    expect(names.flatMap((name) => missed(name, measures[name], values(name)))).toEqual([]);
  });

  it("says that a propeller is unlike a wrongly stated kind once it is logged", () => {
    const misstated = { ...facts, propeller: { ...facts.propeller, family: "thin electric" } };
    const { remarks } = predictPlan(misstated, knownPartsFrom(later), CONDITIONS);
    expect(remarks.join(" ")).toMatch(/measured power coefficient 0\.04\d+ lies outside .*thin electric/);
  });

  it("is planned from the logs of one pack with an interval that holds that pack's true sag", () => {
    const logs = logsWith("18x10").filter(({ pack }) => pack === "A");
    const { measures } = predictPlan(facts, knownPartsFrom(logs.flatMap(loggedFlights)), CONDITIONS);
    const sags = logs.flatMap(({ flights }) => flights.map(({ sagPerCellV }) => sagPerCellV));
    expect(sags.length).toBe(5);
    expect(missed("sagPerCellV", measures.sagPerCellV, sags)).toEqual([]);
  });

  it("is planned with intervals that hold the true mean current and the hot day's peak", () => {
    const { measures } = predictPlan(facts, knownPartsFrom(later), CONDITIONS);
    const whole = logsWith("18x10").flatMap(({ flights, ambientC, sensors }) =>
      flights
        .filter(({ complete }) => complete)
        .map((flight) => ({ ...flight, ambientC, gain: sensors.ampGain })),
    );
    const means = whole.map(
      ({ flightChargeMah, flightTimeS }) => (3.6 * (flightChargeMah ?? 0)) / (flightTimeS ?? 1),
    );
    const hotDay = whole.map(
      ({ controllerPeakC, ambientC }) => controllerPeakC + facts.field.hotDayC - ambientC,
    );
    expect(whole.length).toBe(5);
    expect(missed("meanCurrentA", measures.meanCurrentA, means)).toEqual([]);
    expect(missed("controllerHotDayPeakC", measures.controllerHotDayPeakC, hotDay)).toEqual([]);
  });

  it("is narrow enough to plan by", () => {
    const { measures } = predictPlan(facts, knownPartsFrom(later), CONDITIONS);
    const { staticCurrentA, staticRpm } = measures;
    if (!isKnown(staticCurrentA) || !isKnown(staticRpm)) throw new Error("not predicted");
    expect((staticCurrentA.high! - staticCurrentA.low!) / 2 / staticCurrentA.value).toBeLessThan(0.12);
    expect((staticRpm.high! - staticRpm.low!) / 2 / staticRpm.value).toBeLessThan(0.04);
  });

  it("is swapped from the 18x8 to the 18x10: the predicted intervals hold what the later logs measured", () => {
    const swap = predictSwap(
      ternWith("18x8").facts,
      knownPartsFrom(before),
      { before: CONDITIONS, after: CONDITIONS },
      { ...NO_CHANGE, pitchIn: 10 },
    );
    const measures = swap.after.measures;
    const names = [
      "staticCurrentA",
      "staticPowerW",
      "staticRpm",
      "meanCurrentA",
      "controllerHotDayPeakC",
    ] as const;
    const logged = (name: PlanMeasure) =>
      later.flatMap((flight) => (isKnown(flight.measures[name]) ? [flight.measures[name].value] : []));
    expect(names.map((name) => logged(name).length >= 5)).toEqual(names.map(() => true));
    expect(names.flatMap((name) => missed(name, measures[name], logged(name)))).toEqual([]);
    const sags = later
      .filter(({ complete }) => complete)
      .map(({ measures: { sagPerCellV } }) => sagPerCellV.value ?? 0);
    expect(missed("sagPerCellV", measures.sagPerCellV, sags)).toEqual([]);
    // Full throttle with the charge at the reserve is the worst case: no flight went that far.
    const lowest = later.map(({ measures: { minCellV } }) => minCellV.value ?? 0);
    expect(Math.min(...lowest)).toBeGreaterThan(measures.minCellV.value ?? Number.NaN);
    expect(swap.after.basisOf.propellerPowerCoefficient).toMatch(
      /with another propeller measured in 9 flights/,
    );
    expect(swap.extrapolation.join(" ")).toMatch(/18x10 was not logged/);
  });
});
