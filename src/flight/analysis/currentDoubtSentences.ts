import { plainNumber } from "../../base/quantity/index.ts";

export function chargeNotKnown(why: string): string {
  return `its charge is not known: ${why}`;
}
export const CURRENT_NOT_LOGGED = "its current was not logged; an estimated charge does not count";
export function chargeOnlyBounded(why: string | undefined): string {
  return `its charge is only bounded${why === undefined ? "" : `: ${why}`}`;
}
export const CHARGE_UNLIKE_REST_VOLTS =
  "its charge left does not fit the pack's capacity or its resting volts: check the capacity, the current sensor and the pack's age";
export function chargeLeftOpen(percent: number): string {
  return `its log leaves its charge open by ${plainNumber(percent)} %: holes, or few and coarse readings`;
}

/** A flight or bench run that does not count, and why. */
export interface LeftOutRun {
  readonly name: string;
  readonly why: string;
}

const MOST_NAMED = 3;

/** Each reason once, with the flights that it leaves out. */
export function leftOutRuns(runs: readonly LeftOutRun[]): readonly string[] {
  return [...new Set(runs.map(({ why }) => why))].map((why) => {
    const names = runs.filter((run) => run.why === why).map(({ name }) => name);
    const more = names.length - MOST_NAMED;
    const shown = [...names.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more`] : [])].join(", ");
    return `left out: ${shown}, since ${why}`;
  });
}
