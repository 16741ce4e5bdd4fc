import { expect } from "vitest";
import type { Facts } from "../../../src/aircraft/facts.ts";
import type { Quantity } from "../../../src/base/quantity/index.ts";
import {
  analyseRecording,
  type DayFacts,
  MEASURE_NAMES,
  MEASURE_UNITS,
} from "../../../src/flight/analysis/index.ts";
import type { Recording } from "../../../src/log/recording/index.ts";

/** The flights of a recording, in which every measure and every number of a picture is there and honest. */
export function honestlyAnalysed(recording: Recording, facts: Facts, day: DayFacts) {
  const flights = analyseRecording(recording, facts, day);
  for (const { measures, pictures, weakestPart } of flights) {
    expect(Object.keys(measures).sort()).toEqual([...MEASURE_NAMES].sort());
    for (const name of MEASURE_NAMES) {
      expect(measures[name].unit).toBe(MEASURE_UNITS[name]);
      expectHonest(measures[name], name);
    }
    const drawn = [pictures.pack, pictures.pack.under(50), pictures.heat, pictures.load, weakestPart];
    for (const each of quantitiesIn(drawn)) {
      expectHonest(each, "a picture");
    }
  }
  return flights;
}

function quantitiesIn(value: unknown): readonly Quantity[] {
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return [];
  const own = "value" in value && "unit" in value ? [value as Quantity] : [];
  return [...own, ...Object.values(value).flatMap(quantitiesIn)];
}

/** A finite number within its interval, or none with a reason. */
function expectHonest(quantity: Quantity, name: string): void {
  if (quantity.value === null) {
    expect(quantity.why, name).toMatch(/^\S.*\S$/);
    expect(quantity.why, name).not.toMatch(/undefined|NaN|null/);
    return;
  }
  const { value, low, high, bound } = quantity;
  for (const number of [value, low ?? value, high ?? value]) expect(number, name).toSatisfy(Number.isFinite);
  expect(low ?? value, name).toBeLessThanOrEqual(value);
  expect(high ?? value, name).toBeGreaterThanOrEqual(value);
  if (low === null) expect(bound, name).toBe("atMost");
  if (high === null) expect(bound, name).toBe("atLeast");
}
