import type { GivenFacts, LogbookEntry } from "./entry.ts";

/** Facts that only one flight of a log holds. */
const OF_ONE_FLIGHT: readonly string[] = ["putBackMah", "flownS"];

/** Facts given with a log that is there already, where its flights say something else: they are not taken in. */
export function unusedFacts(
  given: GivenFacts,
  known: readonly Pick<LogbookEntry, "given">[],
): Partial<GivenFacts> {
  const unused = Object.entries(given).filter(([key, value]) => {
    if (value === null || Array.isArray(value)) return false;
    const differs = known.map((entry) => entry.given[key as keyof GivenFacts] !== value);
    return OF_ONE_FLIGHT.includes(key) ? differs.every(Boolean) : differs.some(Boolean);
  });
  return Object.fromEntries(unused);
}
