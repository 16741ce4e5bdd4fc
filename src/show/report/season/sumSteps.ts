import type { TimerTerm } from "../../../season/timer/index.ts";
import type { SumStep } from "../../charts/index.ts";

/** Where the bar of each term lies on the first term's scale; null for a term in another unit. */
export function sumSteps(terms: readonly TimerTerm[]): readonly (SumStep | null)[] {
  const whole = terms[0];
  if (whole === undefined || !(whole.value > 0)) return terms.map(() => null);
  let left = whole.value;
  return terms.map((term) => {
    if (term.unit !== whole.unit) return null;
    if (term.value >= 0) return { from: 0, to: term.value / whole.value, kind: "rest" };
    const from = left / whole.value;
    left += term.value;
    return { from, to: left / whole.value, kind: "taken" };
  });
}
