import { isKnown } from "../../base/quantity/index.ts";
import {
  CHARGE_UNLIKE_REST_VOLTS,
  CURRENT_NOT_LOGGED,
  chargeLeftOpen,
  chargeNotKnown,
  chargeOnlyBounded,
} from "./currentDoubtSentences.ts";
import type { FlightLoad } from "./flightLoad.ts";
import { isCurrentEstimated, type Measures } from "./measures.ts";

/** What a flight's own log says for and against its current. */
export interface CurrentEvidence {
  readonly complete: boolean;
  readonly measures: Pick<Measures, "chargeUsedMah" | "chargeCoveredMah" | "peakCurrentA">;
  /** True where the charge left and the resting volts after landing cannot both be right; absent where they can. */
  readonly isChargeDoubtful?: true;
  /** Carries the same mark in books of older releases. */
  readonly load?: Pick<FlightLoad, "isChargeDoubtful"> | null;
}

/** A charge that holes leave open by more than this, beside the sensor's gain, says too little. */
const MOST_DOUBT = 0.1;

/**
 * Why the current of a flight is not to be believed, in words that go on from its name; null where nothing speaks
 * against it. A log that merely ends under power bounds its charge, and its current may be as good as any.
 * @param accuracyPct of the current sensor, per cent
 */
export function currentDoubt(flight: CurrentEvidence, accuracyPct: number): string | null {
  const { complete, measures } = flight;
  const { chargeUsedMah } = measures;
  if (!isKnown(chargeUsedMah)) return chargeNotKnown(chargeUsedMah.why);
  if (isCurrentEstimated(measures)) return CURRENT_NOT_LOGGED;
  const charge = complete ? chargeUsedMah : measures.chargeCoveredMah;
  if (!isKnown(charge) || charge.low === null || charge.high === null) return chargeOnlyBounded(charge.why);
  if (flight.isChargeDoubtful || flight.load?.isChargeDoubtful) return CHARGE_UNLIKE_REST_VOLTS;
  const open = (charge.high - charge.low) / 2 / charge.value - accuracyPct / 100;
  return open <= MOST_DOUBT ? null : chargeLeftOpen(100 * open);
}
