import type { LogbookEntry } from "../logbook/index.ts";

/** Which charge of its pack each entry was flown on, from 0: flights of one log or of one put-back share a charge. */
export function chargeNumbers(ofPack: readonly LogbookEntry[]): ReadonlyMap<LogbookEntry, number> {
  const numbers = new Map<LogbookEntry, number>();
  ofPack.forEach((entry, index) => {
    const before = ofPack[index - 1];
    const number = before === undefined ? 0 : (numbers.get(before) ?? 0);
    numbers.set(entry, before === undefined || sharesCharge(before, entry) ? number : number + 1);
  });
  return numbers;
}

function sharesCharge(before: LogbookEntry, entry: LogbookEntry): boolean {
  return (
    before.log.sha256 === entry.log.sha256 ||
    before.given.putBackFlights.includes(entry.flight) ||
    entry.given.putBackFlights.includes(before.flight)
  );
}
