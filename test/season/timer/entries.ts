import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import { type KnownQuantity, known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import {
  type HeatDriver,
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../../src/flight/analysis/index.ts";
import type { LogbookEntry } from "../../../src/season/logbook/index.ts";
import { NOTHING_SAID } from "../trends/bookFlights.ts";

export const FITTED: Facts = {
  ...NO_FACTS,
  name: "Plover",
  pack: { ...NO_FACTS.pack, cells: 8, capacityMah: 5000, minLoadedCellV: 3.2 },
  controller: { ...NO_FACTS.controller, limitC: 100 },
  propeller: { ...NO_FACTS.propeller, diameterIn: 18, pitchIn: 10 },
  sensors: { ...NO_FACTS.sensors, currentAccuracyPct: 2 },
};

export interface EntryChanges {
  readonly flight?: string;
  readonly load?: Partial<NonNullable<LogbookEntry["load"]>> | null;
  readonly given?: Partial<LogbookEntry["given"]>;
  readonly facts?: Facts;
  readonly check?: Partial<LogbookEntry["check"]>;
  readonly measures?: Partial<Record<MeasureName, Quantity>>;
  readonly driver?: HeatDriver;
}

/** A whole flight of six minutes on what is fitted: 20 s and 300 mAh of climb, then 6 mAh a second. */
export function entry(changes: EntryChanges = {}): LogbookEntry {
  const none = MEASURE_NAMES.map((name) => [name, unknown(MEASURE_UNITS[name], "not in this test")] as const);
  const measures = {
    ...(Object.fromEntries(none) as unknown as Measures),
    chargeUsedMah: known(2440, 49, "mAh", "measured"),
    flightTimeS: known(360, 3, "s", "measured"),
    ...changes.measures,
  };
  const rise: Quantity & { readonly driver?: HeatDriver } = measures.controllerRisePerA2;
  return {
    format: "tallywatt/flight",
    version: 1,
    flight: changes.flight ?? "one",
    sequence: 0,
    aircraft: "Plover",
    log: { path: "", file: "one.csv", sha256: "", index: 0, flights: 1, headerSignature: null },
    startsAt: null,
    fingerprint: null,
    given: { ...NOTHING_SAID, ...changes.given },
    facts: changes.facts ?? FITTED,
    release: "0",
    check: {
      kind: "flight",
      startedAt: null,
      startS: 0,
      endS: 400,
      complete: true,
      headline: "",
      ...changes.check,
      measures: { ...measures, controllerRisePerA2: { ...rise, driver: changes.driver ?? "packCurrent" } },
    },
    load:
      changes.load === null
        ? null
        : {
            climbS: 20,
            climbChargeMah: 300,
            rateMahPerS: 6,
            groundChargeMah: 100,
            approachS: 25,
            peakCurrentA: 60,
            meanSquareCurrentA2: 700,
            meanDriverA2: null,
            ...changes.load,
          },
  } as LogbookEntry;
}

export function sure(value: number, unit: string): KnownQuantity {
  return { value, low: value, high: value, unit, basis: "derived" };
}

/** The next flight with nothing said of it. */
export const NEXT = { pack: null, ambientC: null, reservePct: 25, startPct: null };

/** Three flights alike. */
export function three(changes: EntryChanges = {}): readonly LogbookEntry[] {
  return [1, 2, 3].map((number) => entry({ ...changes, flight: `flight-${number}` }));
}

/** A full pack of 5000 mAh, a quarter of it kept, under a sensor that is exact. */
export const CONDITIONS = {
  capacityMah: 5000,
  health: 1,
  startShare: 1,
  reserveShare: 0.25,
  gainStandardDeviation: 0,
};
