import type { Quantity } from "../../base/quantity/index.ts";
import { MEASURE_UNITS, type MeasureName, type Measures } from "../../flight/analysis/index.ts";

const BASES = ["measured", "derived", "estimated", "predicted"] as const;

/** A known quantity as [value, low, high, basis, more]; an unknown one as its reason. */
type Packed = string | readonly [number, number | null, number | null, number, object?];

/** Measures as a short list in the order of `names`, for the index: the same numbers to the last digit. */
export function packMeasures(measures: Measures, names: readonly MeasureName[]): readonly Packed[] {
  return names.map((name) => packed(measures[name]));
}

/** The measures of a packed list. */
export function unpackMeasures(
  list: readonly Packed[],
  names: readonly MeasureName[],
): Partial<Record<MeasureName, Quantity>> {
  const measures: Partial<Record<MeasureName, Quantity>> = {};
  for (let at = 0; at < names.length; at += 1) {
    const name = names[at];
    const one = list[at];
    if (name !== undefined && one !== undefined) measures[name] = unpacked(one, MEASURE_UNITS[name]);
  }
  return measures;
}

function packed(quantity: Quantity): Packed {
  if (quantity.value === null) return quantity.why;
  const { value, low, high, unit: _unit, basis, ...more } = quantity;
  const plain = [value, low, high, BASES.indexOf(basis)] as const;
  return Object.keys(more).length === 0 ? plain : [...plain, more];
}

function unpacked(one: Packed, unit: string): Quantity {
  if (typeof one === "string") return { value: null, unit, why: one };
  const [value, low, high, basis, more] = one;
  return { value, low, high, unit, basis: BASES[basis] ?? "estimated", ...more };
}
