import type { Facts } from "../../aircraft/facts.ts";
import { isKnown, type KnownQuantity } from "../../base/quantity/index.ts";
import { isCurrentEstimated } from "../../flight/analysis/measures.ts";
import type { BriefFlight } from "../logbook/index.ts";
import type { LoggedLoad } from "./loggedLoad.ts";
import { fittedPropeller, flownPropeller } from "./propellerName.ts";
import {
  benchRunLeftOut,
  cutShortLeftOut,
  deadSensorLeftOut,
  doubtfulChargeLeftOut,
  estimatedLeftOut,
  flownLeftOut,
  noLoadLeftOut,
  onlyBoundLeftOut,
  otherCellsLeftOut,
  otherPackLeftOut,
  otherPropellerLeftOut,
  restVoltsLeftOut,
} from "./sentences.ts";

/** A flight that does not count for the timer, and why. */
export interface LeftOutFlight {
  readonly flight: string;
  readonly why: string;
}

export interface CountedFlights {
  readonly counted: readonly BriefFlight[];
  readonly leftOut: readonly LeftOutFlight[];
}

/** A charge that holes leave open by more than this, beside the sensor's gain, says too little. */
const MOST_DOUBT = 0.1;

/**
 * The flights that say something about the next one: complete, with a known load, on the propeller, the
 * cell count and the size of pack that are fitted now.
 */
export function countedFlights(entries: readonly BriefFlight[], fitted: Facts): CountedFlights {
  const reasons = entries.map((entry) => ({ entry, why: reasonToLeaveOut(entry, fitted) }));
  return {
    counted: reasons.filter(({ why }) => why === null).map(({ entry }) => entry),
    leftOut: reasons.flatMap(({ entry, why }) => (why === null ? [] : [{ flight: entry.flight, why }])),
  };
}

function reasonToLeaveOut(entry: BriefFlight, fitted: Facts): string | null {
  if (entry.check.kind === "benchRun") return benchRunLeftOut();
  return otherFitting(entry, fitted) ?? doubt(entry);
}

function otherFitting(entry: BriefFlight, fitted: Facts): string | null {
  const [flown, now] = [flownPropeller(entry), fittedPropeller(fitted)];
  if (flown !== null && now !== null && flown !== now) return otherPropellerLeftOut(flown, now);
  const [ofFlight, ofNow] = [entry.facts.pack, fitted.pack];
  if (ofFlight.cells !== ofNow.cells) return otherCellsLeftOut(ofFlight.cells, ofNow.cells);
  const isOtherSize = ofFlight.capacityMah !== null && ofFlight.capacityMah !== ofNow.capacityMah;
  return isOtherSize && ofNow.capacityMah !== null
    ? otherPackLeftOut(ofFlight.capacityMah, ofNow.capacityMah)
    : null;
}

function doubt(entry: BriefFlight): string | null {
  if (!entry.check.complete) return cutShortLeftOut();
  const { chargeUsedMah, flightTimeS } = entry.check.measures;
  if (!isKnown(chargeUsedMah)) return deadSensorLeftOut(chargeUsedMah.why);
  if (isCurrentEstimated(entry.check.measures)) return estimatedLeftOut();
  const { value, low, high } = chargeUsedMah;
  if (low === null || high === null) return onlyBoundLeftOut();
  if (entry.load?.isChargeDoubtful) return restVoltsLeftOut();
  const gain = entry.facts.sensors.currentAccuracyPct / 100;
  const open = (high - low) / 2 / value - gain;
  if (!(open <= MOST_DOUBT)) return doubtfulChargeLeftOut(100 * open);
  if (!(entry.load !== null && entry.load.rateMahPerS > 0)) return noLoadLeftOut();
  const { flownS } = entry.given;
  if (flownS === null || !isKnown(flightTimeS) || isFlownPossible(flownS, flightTimeS)) return null;
  return flownLeftOut(flownS, flightTimeS.value);
}

/**
 * A stated time may miss the log's interval by the larger of these, seconds and share of the flight: take-off and
 * landing by eye. Less upwards: a longer time makes a smaller rate, and so a longer timer.
 */
const MOST_BELOW = { seconds: 30, share: 0.15 };
const MOST_ABOVE = { seconds: 10, share: 0.1 };

/** A time that cannot be this log's would change the charge rate, and with it the timer, at will. */
function isFlownPossible(flownS: number, { value, low, high }: KnownQuantity): boolean {
  const slackS = ({ seconds, share }: typeof MOST_BELOW) => Math.max(seconds, share * value);
  return flownS >= (low ?? value) - slackS(MOST_BELOW) && flownS <= (high ?? value) + slackS(MOST_ABOVE);
}

/** The load of a counted flight with its charges corrected by `gain` and its length by the pilot's watch. */
export function loadOf(entry: BriefFlight, gain: number): LoggedLoad | null {
  const { load } = entry;
  if (load === null) return null;
  return {
    flight: entry.flight,
    climbS: load.climbS,
    climbChargeMah: gain * load.climbChargeMah,
    rateMahPerS: gain * rateByTheWatch(entry, load.rateMahPerS, load.climbS),
    groundChargeMah: gain * load.groundChargeMah,
    approachS: load.approachS,
    peakCurrentA: gain * load.peakCurrentA,
  };
}

/** `--flown` replaces the measured flight time: the same charge over the pilot's own length. */
function rateByTheWatch(entry: BriefFlight, rateMahPerS: number, climbS: number): number {
  const { flownS } = entry.given;
  const measuredS = entry.check.measures.flightTimeS.value;
  if (flownS === null || measuredS === null || flownS <= climbS || measuredS <= climbS) return rateMahPerS;
  return (rateMahPerS * (measuredS - climbS)) / (flownS - climbS);
}
