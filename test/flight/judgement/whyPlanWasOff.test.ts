import { describe, expect, it } from "vitest";
import { NO_BUDGET, type Planned } from "../../../src/aircraft/budget.ts";
import type { Facts } from "../../../src/aircraft/facts.ts";
import { isKnown, known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../../src/flight/analysis/index.ts";
import { judgeFlight, type WhyOff, whyPlanWasOff } from "../../../src/flight/judgement/index.ts";
import {
  NO_AIR_OF_DAY,
  NO_DESCRIBED_VALUE,
  NOT_IN_THIS_LOG,
  PILOTS_CHOICE,
} from "../../../src/flight/judgement/whyOffSentences.ts";
import {
  centreOf,
  NOTHING_KNOWN,
  planModel,
  predictPlan,
  preparedPlan,
} from "../../../src/flight/prediction/index.ts";
import { ternWith } from "../prediction/demoSeason.ts";

const { facts } = ternWith("18x10");
const DAY = { ambientC: 15, startPct: null };
const DESCRIBED = { ambientC: null, elevationM: null, reservePct: 25 };

/** A flight that measured exactly what is given; the rest is not known. */
function measuring(given: Partial<Record<MeasureName, number>>): Measures {
  const entries = MEASURE_NAMES.map((name): [MeasureName, Quantity] => {
    const value = given[name];
    const unit = MEASURE_UNITS[name];
    return [
      name,
      value === undefined ? unknown(unit, "not here") : known(value, 0.01 * value, unit, "measured"),
    ];
  });
  return Object.fromEntries(entries) as unknown as Measures;
}

function explained(
  planned: Partial<Planned>,
  given: Partial<Record<MeasureName, number>>,
  more: { readonly facts?: Facts; readonly ambientC?: number | null } = {},
): readonly WhyOff[] {
  const budget = { ...NO_BUDGET, planned: { ...NO_BUDGET.planned, ...planned } };
  const measures = measuring(given);
  const flown = more.facts ?? facts;
  const judgements = judgeFlight(measures, "flight", flown, budget);
  const day = { ...DAY, ambientC: more.ambientC === undefined ? DAY.ambientC : more.ambientC };
  return whyPlanWasOff({ kind: "flight", complete: true, measures, facts: flown, day }, budget, judgements);
}

const described = preparedPlan(facts, NOTHING_KNOWN, DESCRIBED);
const baselineA = planModel(centreOf(described.inputs), described.frame).staticCurrentA;
const value = (quantity: Quantity): number => quantity.value ?? Number.NaN;
const changeOf = (why: WhyOff, fact: string): Quantity =>
  why.parts.find((part) => part.fact === fact)!.change;

describe("why the plan was off", () => {
  it("is silent when every planned line held or nothing was planned", () => {
    expect(explained({ staticCurrentA: 55 }, { staticCurrentA: 54 })).toEqual([]);
    expect(explained({}, { staticCurrentA: 90 })).toEqual([]);
  });

  it("adds up: measured = planned - the plan itself + the changes + the rest", () => {
    const [why] = explained(
      { staticCurrentA: 70 },
      { staticCurrentA: 52, propellerPowerCoefficient: 0.044, packResistance10sMohm: 52, restCellV: 4.15 },
    );
    const changes = why!.parts.map(({ change }) => change).filter(isKnown);
    const sum = changes.reduce((total, change) => total + change.value, value(why!.rest));
    expect(70 - value(why!.planItself) + sum).toBeCloseTo(52, 9);
    expect(value(why!.baseline)).toBeCloseTo(baselineA, 9);
    expect(value(why!.planItself)).toBeCloseTo(70 - baselineA, 9);
    expect(predictPlan(facts, NOTHING_KNOWN, DESCRIBED).measures.staticCurrentA.value).toBeCloseTo(
      baselineA,
      9,
    );
  });

  it("lays a difference of one part at that part's door", () => {
    const inputs = centreOf(described.inputs);
    const heavier = { ...inputs, powerCoefficient: 1.3 * inputs.powerCoefficient };
    const measuredA = planModel(heavier, described.frame).staticCurrentA;
    const [why] = explained(
      { staticCurrentA: baselineA },
      { staticCurrentA: measuredA, propellerPowerCoefficient: heavier.powerCoefficient },
    );
    expect(value(why!.planItself)).toBeCloseTo(0, 9);
    expect(value(changeOf(why!, "propellerPowerCoefficient"))).toBeCloseTo(measuredA - baselineA, 9);
    expect(value(why!.rest)).toBeCloseTo(0, 1);
    expect(why!.text).toMatch(/propeller \+\d/);
  });

  it("finds the pilot's own number wrong when the parts are as described", () => {
    const [why] = explained({ staticCurrentA: 1.5 * baselineA }, { staticCurrentA: baselineA });
    expect(value(why!.planItself)).toBeCloseTo(0.5 * baselineA, 9);
    expect(value(why!.rest)).toBeCloseTo(0, 9);
    expect(why!.text).toMatch(/the plan itself -\d/);
  });

  it("sees a part-charged pack and a hot day", () => {
    const [why] = explained(
      { staticCurrentA: 60 },
      { staticCurrentA: 35, restCellV: 3.95 },
      { ambientC: 35 },
    );
    expect(value(changeOf(why!, "startVoltage"))).toBeLessThan(-2);
    expect(value(changeOf(why!, "airDensity"))).toBeLessThan(0);
  });

  it("says which facts this log does not give", () => {
    const [why] = explained({ staticCurrentA: 60 }, { staticCurrentA: 35 }, { ambientC: null });
    expect(changeOf(why!, "packResistance")).toMatchObject({ value: null, why: NOT_IN_THIS_LOG });
    expect(changeOf(why!, "airDensity")).toMatchObject({ value: null, why: NO_AIR_OF_DAY });
  });

  it("takes the throttle, the time flown and the taxi into the charge", () => {
    const whys = explained(
      { chargeUsedMah: 1000, meanCurrentA: 15, flightTimeS: 300 },
      { chargeUsedMah: 2500, flightChargeMah: 2400, meanCurrentA: 24, staticCurrentA: 50, flightTimeS: 360 },
    );
    expect(whys.map(({ line }) => line).sort()).toEqual(["chargeUsedMah", "meanCurrentA"]);
    const charge = whys.find(({ line }) => line === "chargeUsedMah")!;
    expect(value(changeOf(charge, "timeFlown"))).toBeGreaterThan(0);
    expect(value(changeOf(charge, "cruiseShare"))).toBeGreaterThan(0);
    expect(value(changeOf(charge, "groundCharge"))).toBeLessThan(0);
  });

  it("does not pretend where the aircraft file holds no ground for it", () => {
    const whys = explained(
      { flightTimeS: 400, controllerPeakC: 50 },
      { flightTimeS: 200, controllerPeakC: 90 },
    );
    const reasons = Object.fromEntries(
      whys.map(({ line, baseline }) => [line, baseline.value === null ? baseline.why : ""]),
    );
    expect(reasons).toEqual({ flightTimeS: PILOTS_CHOICE, controllerPeakC: NO_DESCRIBED_VALUE });
    const [bare] = explained(
      { staticCurrentA: 60 },
      { staticCurrentA: 35 },
      { facts: { ...facts, motor: { ...facts.motor, kv: null } } },
    );
    expect(bare!.baseline.value).toBeNull();
    expect(bare!.text).toMatch(/why cannot be told/);
  });
});
