import type { Facts } from "../../aircraft/facts.ts";
import type { DayFacts } from "../../flight/analysis/index.ts";
import type { GivenFacts } from "./entry.ts";

const PROPELLER = /^\s*(\d{1,2}(?:\.\d+)?)\s*[x×*]\s*(\d{1,2}(?:\.\d+)?)\s*$/i;

/** Diameter and pitch, inches. */
export interface PropellerSize {
  readonly diameterIn: number;
  readonly pitchIn: number;
}

/** "18x10" to its numbers; null for anything else. */
export function propellerSize(text: string): PropellerSize | null {
  const found = PROPELLER.exec(text);
  const [diameterIn, pitchIn] = [Number(found?.[1]), Number(found?.[2])];
  return diameterIn > 0 && pitchIn > 0 ? { diameterIn, pitchIn } : null;
}

/** The usual spelling: "18.0 X 8" is "18x8". */
export function propellerText({ diameterIn, pitchIn }: PropellerSize): string {
  return `${diameterIn}x${pitchIn}`;
}

/** What is fitted in this one flight: another propeller has blades and kind of the fitted one, its limit is unknown. */
function factsOfFlight(facts: Facts, given: GivenFacts): Facts {
  const size = given.propeller === null ? null : propellerSize(given.propeller);
  if (size === null) return facts;
  const { propeller } = facts;
  const isFitted = propeller.diameterIn === size.diameterIn && propeller.pitchIn === size.pitchIn;
  return isFitted ? facts : { ...facts, propeller: { ...propeller, ...size, maxRpm: null } };
}

/** The facts a flight is judged with: the fitted ones, its own propeller, and a cell count given with its log. */
export function judgedFacts(facts: Facts, given: GivenFacts, cells: number | null): Facts {
  const own = factsOfFlight(facts, given);
  return cells === null ? own : { ...own, pack: { ...own.pack, cells } };
}

export function dayOf({ ambientC, startPct }: GivenFacts): DayFacts {
  return { ambientC, startPct };
}
