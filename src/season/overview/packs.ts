import type { KnownQuantity, Quantity } from "../../base/quantity/index.ts";
import { median } from "../../base/statistics/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";
import type { SeasonFlight } from "./place.ts";

/** One pack over the season, to stand beside the others. */
export interface PackOverSeason {
  /** Null for flights whose pack nobody named. */
  readonly pack: string | null;
  readonly flights: number;
  /** Flights of one log or of one put-back share a charge; bench runs count. */
  readonly charges: number;
  /** Places of its first and last flight. */
  readonly firstPlace: number;
  readonly lastPlace: number;
  /** First and latest resistance one second after a step, mohm; null when no flight gives one. */
  readonly firstResistance: KnownQuantity | null;
  readonly lastResistance: KnownQuantity | null;
  readonly resistances: number;
  readonly medianChargeMah: number | null;
  readonly lowestCellV: number | null;
  readonly capacityMah: number | null;
}

/** Every pack, in the order of its first flight. */
export function packsOverSeason(flights: readonly SeasonFlight[]): readonly PackOverSeason[] {
  const packs = new Map<string, SeasonFlight[]>();
  for (const flight of flights) {
    const { cells, capacityMah } = flight.entry.facts.pack;
    const key = [flight.entry.given.pack ?? "", cells, capacityMah].join("|");
    const own = packs.get(key) ?? [];
    own.push(flight);
    packs.set(key, own);
  }
  return [...packs.values()].map(packOverSeason);
}

function packOverSeason(own: readonly SeasonFlight[]): PackOverSeason {
  const [first] = own;
  const last = own.at(-1);
  if (first === undefined || last === undefined) throw new RangeError("a pack without a flight");
  const known = own.flatMap(({ entry }) => knownOnly(entry.check.measures.packResistanceMohm));
  const charges = own.flatMap(({ entry, number }) => {
    const { value } = entry.check.measures.chargeUsedMah;
    return value === null || number === null || !entry.check.complete ? [] : [value];
  });
  const cells = own.flatMap(({ entry }) => entry.check.measures.minCellV.value ?? []);
  return {
    pack: first.entry.given.pack,
    flights: own.filter(({ number }) => number !== null).length,
    charges: chargesOf(own),
    firstPlace: first.place,
    lastPlace: last.place,
    firstResistance: known[0] ?? null,
    lastResistance: known.at(-1) ?? null,
    resistances: known.length,
    medianChargeMah: charges.length === 0 ? null : median(charges),
    lowestCellV: cells.length === 0 ? null : Math.min(...cells),
    capacityMah: last.entry.facts.pack.capacityMah,
  };
}

function chargesOf(own: readonly SeasonFlight[]): number {
  return own.filter(({ entry }, at) => {
    const before = own[at - 1]?.entry;
    return before === undefined || !shareCharge(before, entry);
  }).length;
}

/** Flights of one log or of one put-back. */
function shareCharge(before: LogbookEntry, entry: LogbookEntry): boolean {
  return (
    before.log.sha256 === entry.log.sha256 ||
    before.given.putBackFlights.includes(entry.flight) ||
    entry.given.putBackFlights.includes(before.flight)
  );
}

function knownOnly(quantity: Quantity): readonly KnownQuantity[] {
  return quantity.value === null ? [] : [quantity];
}
