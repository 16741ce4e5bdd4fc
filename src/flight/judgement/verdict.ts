import { isKnown, type KnownQuantity, type Quantity } from "../../base/quantity/index.ts";
import type { Judgement, Verdict } from "./judgement.ts";

/** A two-sided plan line holds within this share of the planned number. */
const PLAN_SHARE = 0.1;

/** The side of a limit that is good, written as one closed range; an open end is infinite. */
function goodRange(sense: Judgement["sense"], value: number): readonly [number, number] {
  if (sense === "atMost") return [Number.NEGATIVE_INFINITY, value];
  if (sense === "atLeast") return [value, Number.POSITIVE_INFINITY];
  return [value * (1 - PLAN_SHARE), value * (1 + PLAN_SHARE)];
}

/**
 * Holds a measure's whole interval against a number. An end that is not known counts as infinite, so a
 * bound can be `outside` or `within` only where the known end settles it, else it is `not judged`.
 * NaN, null and a number in doubt never pass.
 */
export function verdictOf(
  measured: Quantity,
  sense: Judgement["sense"],
  value: number,
  closeMargin: number,
): Verdict {
  if (measured.value === null || !Number.isFinite(measured.value) || !Number.isFinite(value))
    return "not judged";
  if (measured.doubt !== undefined) return "not judged";
  const low = measured.low ?? Number.NEGATIVE_INFINITY;
  const high = measured.high ?? Number.POSITIVE_INFINITY;
  if (!(low <= high)) return "not judged";
  const [goodLow, goodHigh] = goodRange(sense, value);
  if (low > goodHigh || high < goodLow) return "outside";
  if (low >= goodLow && high <= goodHigh) {
    return isNearerThan(measured, sense, value, closeMargin) ? "close" : "within";
  }
  return Number.isFinite(low) && Number.isFinite(high) ? "close" : "not judged";
}

/** Whether a limit may have been passed: told before one that is only near. */
export function mayBePassed({ measured, sense, value }: Judgement): boolean {
  return value !== null && mayBeBeyond(measured, sense, value);
}

/** Whether a measure's interval crosses the number, so that it may lie beyond it. */
export function mayBeBeyond(measured: Quantity, sense: Judgement["sense"], value: number): boolean {
  if (!isKnown(measured)) return false;
  const { low, high } = measured;
  if (low === null || high === null) return false;
  const [goodLow, goodHigh] = goodRange(sense, value);
  return low < goodLow || high > goodHigh;
}

function isNearerThan(
  measured: KnownQuantity,
  sense: Judgement["sense"],
  value: number,
  closeMargin: number,
): boolean {
  if (closeMargin <= 0 || sense === "around") return false;
  const room = sense === "atMost" ? value - measured.value : measured.value - value;
  return room < closeMargin;
}
