import type { Facts } from "../../aircraft/facts.ts";
import { highEnd, isKnown, type KnownQuantity, lowEnd } from "../../base/quantity/index.ts";
import { currentDoubt } from "../../flight/analysis/currentDoubt.ts";
import type { BriefFlight } from "../logbook/index.ts";
import type { LoggedLoad } from "./loggedLoad.ts";
import { fittedPropeller, flownPropeller } from "./propellerName.ts";
import {
  benchRunLeftOut,
  cutShortLeftOut,
  flownLeftOut,
  noLoadLeftOut,
  otherCellsLeftOut,
  otherPackLeftOut,
  otherPropellerLeftOut,
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
  const ofCurrent = currentDoubt(
    { ...entry.check, load: entry.load },
    entry.facts.sensors.currentAccuracyPct,
  );
  if (ofCurrent !== null) return ofCurrent;
  if (!(entry.load !== null && entry.load.rateMahPerS > 0)) return noLoadLeftOut();
  const { flownS } = entry.given;
  const { flightTimeS } = entry.check.measures;
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
function isFlownPossible(flownS: number, loggedS: KnownQuantity): boolean {
  const slackS = ({ seconds, share }: typeof MOST_BELOW) => Math.max(seconds, share * loggedS.value);
  return flownS >= lowEnd(loggedS) - slackS(MOST_BELOW) && flownS <= highEnd(loggedS) + slackS(MOST_ABOVE);
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
