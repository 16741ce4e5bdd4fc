import { DEFAULT_APPROACH_S, FLIGHTS_FOR_APPROACH, type LoggedLoad } from "./loggedLoad.ts";

/** The longest approach and landing of the counted flights, whole seconds; a usual one at least until three are known. */
export function longestApproachS(loads: readonly LoggedLoad[]): number {
  const longest = Math.ceil(Math.max(...loads.map((load) => load.approachS)));
  return loads.length >= FLIGHTS_FOR_APPROACH ? longest : Math.max(DEFAULT_APPROACH_S, longest);
}
