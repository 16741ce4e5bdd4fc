import { atLeast, between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { holeLimitS } from "../../log/recording/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { highest } from "./extremes.ts";
import { type FlightContext, runningRows } from "./flightContext.ts";
import { hiddenOffsetA } from "./hiddenOffset.ts";
import { NO_CONTROLLER_RATING } from "./sentences.ts";
import { sumBasis } from "./sumBasis.ts";
import { CURRENT_UNSEEN, LOWER_BOUND_CEILING, noValueHere } from "./sumSentences.ts";
import { unseenCurrent } from "./unseenCurrent.ts";

interface TimeAbove {
  readonly totalS: number;
  readonly longestS: number;
  readonly stretches: number;
}

/**
 * overRatingS and longestOverRatingS: time that the straight line between rows lies above the controller's
 * continuous rating, in all and in one stretch. Interval: the sensor's gain, what a negative reading at rest
 * hides, the step at each crossing, and upwards all of the holes up to a minute.
 */
export function overRating(context: FlightContext): { overRatingS: Quantity; longestOverRatingS: Quantity } {
  const { facts, recording, rows } = context;
  const none = (why: string) => ({ overRatingS: unknown("s", why), longestOverRatingS: unknown("s", why) });
  const amps = channelOrWhy(recording, "current");
  if (amps.values === null) return none(amps.why);
  const ratingA = facts.controller.continuousA;
  if (ratingA === null) return none(NO_CONTROLLER_RATING);
  if (highest(amps.values, rows) === null) return none(noValueHere("current"));
  const gain = facts.sensors.currentAccuracyPct / 100;
  const at = timeAbove(context, amps.values, ratingA);
  const least = timeAbove(context, amps.values, ratingA / (1 - gain));
  const hiddenA = hiddenOffsetA(sumBasis(recording, amps.values).offsetA);
  const most = timeAbove(context, amps.values, ratingA / (1 + gain) - hiddenA);
  const reachS = recording.stepS * Math.sqrt(Math.max(at.stretches, most.stretches) / 3);
  const unseen = unseenCurrent(recording, runningRows(context));
  const isCeiling = (sumBasis(recording, amps.values).ceilingA ?? Number.POSITIVE_INFINITY) <= ratingA;
  const quantity = (value: number, low: number, high: number) => {
    const least = Math.max(0, low - reachS);
    if (unseen.lostS > 0) return atLeast(value, least, "s", "measured", CURRENT_UNSEEN);
    if (isCeiling) return atLeast(value, least, "s", "measured", LOWER_BOUND_CEILING);
    const bound = unseen.bridgedS > 0 ? ({ bound: "interval" } as const) : {};
    return between(value, least, high + reachS + unseen.bridgedS, "s", "measured", bound);
  };
  return {
    overRatingS: quantity(at.totalS, least.totalS, most.totalS),
    longestOverRatingS: quantity(at.longestS, least.longestS, most.longestS),
  };
}

function timeAbove({ recording, rows }: FlightContext, amps: Float64Array, limitA: number): TimeAbove {
  const { timeS } = recording;
  const farthestS = holeLimitS(recording.stepS);
  let totalS = 0;
  let longestS = 0;
  let stretchS = 0;
  let stretches = 0;
  let before = -1;
  for (let row = rows.firstRow; row <= rows.lastRow; row++) {
    if (Number.isNaN(amps[row]!)) continue;
    const stepS = before < 0 ? 0 : timeS[row]! - timeS[before]!;
    const isPair = before >= 0 && stepS <= farthestS;
    const share = isPair ? shareAbove(amps[before]! - limitA, amps[row]! - limitA) : 0;
    if (share > 0 && stretchS === 0) stretches++;
    totalS += share * stepS;
    stretchS += share * stepS;
    longestS = Math.max(longestS, stretchS);
    if (!isPair || amps[row]! <= limitA) stretchS = 0;
    before = row;
  }
  return { totalS, longestS, stretches };
}

/** Share of a step that a straight line from `start` to `end` lies above zero. */
function shareAbove(start: number, end: number): number {
  if (start > 0 && end > 0) return 1;
  if (start <= 0 && end <= 0) return 0;
  return start > 0 ? start / (start - end) : end / (end - start);
}
