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
export function chargeOpenByHoles(percent: number): string {
  return `holes in its log leave its charge open by ${plainNumber(percent)} %`;
}
