import type { Facts } from "../../aircraft/facts.ts";
import type { BriefFlight } from "../logbook/index.ts";

/** The propeller a flight was flown on, as "18x10" or "18x10x3" (blades other than two); null when nobody said. */
export function flownPropeller(entry: BriefFlight): string | null {
  const written = entry.given.propeller;
  return written === null ? fittedPropeller(entry.facts) : plainName(written, entry.facts.propeller.blades);
}

export function fittedPropeller({ propeller }: Facts): string | null {
  const { diameterIn, pitchIn, blades } = propeller;
  return diameterIn === null || pitchIn === null ? null : nameOf(diameterIn, pitchIn, blades);
}

/** "18 X 10.0" and "18x10" are one propeller; other spellings stay as written. */
function plainName(written: string, usualBlades: number): string {
  const found = /^\s*(\d+(?:[.,]\d+)?)\s*[x×*]\s*(\d+(?:[.,]\d+)?)(?:\s*[x×*]\s*(\d))?\s*$/i.exec(written);
  if (!found) return written.trim();
  const [diameter, pitch, blades] = found
    .slice(1)
    .map((part) => Number((part ?? String(usualBlades)).replace(",", ".")));
  return nameOf(diameter ?? 0, pitch ?? 0, blades ?? usualBlades);
}

function nameOf(diameterIn: number, pitchIn: number, blades: number): string {
  return blades === 2 ? `${diameterIn}x${pitchIn}` : `${diameterIn}x${pitchIn}x${blades}`;
}
