import type { LogbookEntry } from "./entry.ts";

/**
 * Flights in the order of flying: by their start where it is known. One whose day nobody knows, or whose
 * time of the day, comes right after the flight that was added before it (on that day).
 */
export function inOrderOfFlying<Entry extends Pick<LogbookEntry, "sequence" | "startsAt">>(
  entries: readonly Entry[],
): readonly Entry[] {
  const asAdded = [...entries].sort((one, other) => one.sequence - other.sequence);
  let last = "";
  const keyed = asAdded.map((entry) => {
    last = sortKey(entry.startsAt, last);
    return { entry, key: last };
  });
  // A sort leaves equal keys in place: in the order of adding.
  return keyed
    .sort((one, other) => (one.key < other.key ? -1 : one.key > other.key ? 1 : 0))
    .map(({ entry }) => entry);
}

function sortKey(startsAt: string | null, last: string): string {
  if (startsAt === null) return last;
  const isWholeDay = !startsAt.includes("T");
  return isWholeDay && last.startsWith(startsAt) ? last : startsAt;
}
