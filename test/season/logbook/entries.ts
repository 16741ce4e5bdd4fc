import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../../src/flight/analysis/index.ts";
import { type GivenFacts, type LogbookEntry, NOTHING_GIVEN } from "../../../src/season/logbook/index.ts";

export interface EntryPlan {
  readonly flight?: string;
  readonly sequence?: number;
  readonly startsAt?: string | null;
  readonly chargeUsedMah?: number | Quantity;
  readonly complete?: boolean;
  readonly given?: Partial<GivenFacts>;
  readonly currentScale?: number;
  readonly measures?: Partial<Record<MeasureName, Quantity>>;
}

export function measuresWith(measures: Partial<Record<MeasureName, Quantity>>): Measures {
  const all = MEASURE_NAMES.map((name) => [
    name,
    measures[name] ?? unknown(MEASURE_UNITS[name], "not logged"),
  ]);
  return Object.fromEntries(all) as Measures;
}

/** An entry that says what is given and nothing else. */
export function entryWith(plan: EntryPlan = {}): LogbookEntry {
  const { flight = "one", sequence = 1, startsAt = null, chargeUsedMah = 2000, complete = true } = plan;
  const charge =
    typeof chargeUsedMah === "number" ? known(chargeUsedMah, 80, "mAh", "measured") : chargeUsedMah;
  const sensors = { ...NO_FACTS.sensors, currentScale: plan.currentScale ?? 1 };
  return {
    format: "tallywatt/flight",
    version: 1,
    flight,
    sequence,
    aircraft: "Heron",
    log: {
      path: `logs/${flight}.csv`,
      file: `${flight}.csv`,
      sha256: flight,
      index: 0,
      flights: 1,
      headerSignature: null,
    },
    startsAt,
    fingerprint: null,
    given: { ...NOTHING_GIVEN, ...plan.given },
    facts: { ...NO_FACTS, sensors },
    release: "0.1.0",
    check: {
      kind: "flight",
      startedAt: null,
      startS: 10,
      endS: 310,
      complete,
      headline: "Flew.",
      measures: measuresWith({ chargeUsedMah: charge, ...plan.measures }),
    },
    load: null,
  };
}
