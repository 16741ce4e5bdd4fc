import { type Quantity, unknown } from "../../src/base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../src/flight/analysis/index.ts";

/** A full set of measures: those given, the rest null with a reason. */
export function measuresOf(given: Partial<Record<MeasureName, Quantity>>): Measures {
  const entries = MEASURE_NAMES.map((name) => [
    name,
    given[name] ?? unknown(MEASURE_UNITS[name], "not in this example"),
  ]);
  return Object.fromEntries(entries) as unknown as Measures;
}
