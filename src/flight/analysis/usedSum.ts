import { atLeast, between, type Quantity, unknown } from "../../base/quantity/index.ts";
import { halfWidthOfSum } from "./coveredSum.ts";
import { LARGEST_HIDDEN_IDLE_A } from "./hiddenOffset.ts";
import { LONGEST_BRIDGED_HOLE_S } from "./segments.ts";
import type { Summed } from "./summed.ts";
import * as sentences from "./sumSentences.ts";
import { largestAround, type SumGap } from "./trapezoid.ts";

/** How far on either side of a hole its largest neighbour is looked for. */
const REACH_AROUND_HOLE_S = 10;

/** Whether the motor runs at the very ends of what was logged. */
export interface PowerAtEnds {
  readonly startsUnderPower: boolean;
  readonly endsUnderPower: boolean;
}

/** What a hole may have used: the straight line between its edges, and at most. */
interface BridgedGap {
  readonly seconds: number;
  readonly value: number;
  readonly most: number;
  /** What one ampere is worth in it. */
  readonly perAmpere: number;
}

/**
 * The covered sum with an estimate for each hole up to a minute, lifted by a negative reading at rest.
 * A lower bound where the log starts or ends under power or a longer hole lies inside. Where the current sensor
 * sticks the interval reaches from nothing used to the largest neighbour, as in a hole.
 */
export function usedQuantity(
  summed: Summed | { readonly why: string },
  unit: "mAh" | "Wh",
  power: PowerAtEnds,
): Quantity {
  if ("why" in summed) return unknown(unit, summed.why);
  const { sum, offsetA, perUnit } = summed;
  const gaps = sum.gaps.filter(isBridged(summed)).map((gap) => bridge(summed, gap));
  if (sum.coveredS === 0 && gaps.length === 0) return unknown(unit, sentences.NO_ROWS_TO_SUM);
  const gapValue = total(gaps, (gap) => gap.value);
  const perAmpere = sum.perAmpere + total(gaps, (gap) => gap.perAmpere);
  const value = sum.covered - offsetA * sum.perAmpere + gapValue;
  const halfWidth = halfWidthOfSum(value, summed);
  const stuck = summed.stuck.map((gap) => bridge(summed, gap));
  // What a pack gave is never less than nothing: only a sum that reads negative is.
  const least = value - halfWidth - Math.max(0, gapValue + total(stuck, (gap) => gap.value));
  const low = Math.min(value, Math.max(0, least));
  const idle = offsetA < 0 ? LARGEST_HIDDEN_IDLE_A * perAmpere : 0;
  const doubtful = [...gaps, ...stuck];
  const high = value + halfWidth + total(doubtful, (gap) => gap.most - gap.value) + idle;
  const basis = doubtful.length > 0 ? "estimated" : offsetA < 0 ? "derived" : "measured";
  const bound = reasonForBound(summed, power);
  if (bound !== null) return atLeast(value / perUnit, low / perUnit, unit, basis, bound);
  return between(value / perUnit, low / perUnit, high / perUnit, unit, basis, remarks(gaps, stuck, offsetA));
}

function isBridged(summed: Summed): (gap: SumGap) => boolean {
  return (gap) => {
    const { timeS } = summed.integrand;
    const isShort = timeS[gap.rowAfter]! - timeS[gap.rowBefore]! <= LONGEST_BRIDGED_HOLE_S;
    return isShort && !summed.unknownRows.some((row) => row > gap.rowBefore && row <= gap.rowAfter);
  };
}

function bridge({ integrand, offsetA }: Summed, gap: SumGap): BridgedGap {
  const seconds = gap.endS - gap.startS;
  const { volts } = integrand;
  const perAmpere = volts === null ? seconds : (seconds * (volts[gap.rowBefore]! + volts[gap.rowAfter]!)) / 2;
  const lifted = -offsetA * perAmpere;
  const value = gap.linearSum + lifted;
  const largest = largestAround(integrand, gap, REACH_AROUND_HOLE_S) * seconds + lifted;
  return { seconds, value, most: Math.max(value, largest), perAmpere };
}

function reasonForBound(summed: Summed, power: PowerAtEnds): string | null {
  if (power.startsUnderPower) return sentences.LOWER_BOUND_START;
  if (power.endsUnderPower) return sentences.LOWER_BOUND_END;
  if (summed.isAtCeiling) return sentences.LOWER_BOUND_CEILING;
  if (!summed.sum.gaps.every(isBridged(summed))) return sentences.LOWER_BOUND_LONG_HOLE;
  const { timeS } = summed.integrand;
  const { firstRow, lastRow, startS, endS } = summed.range;
  const fromS = Math.max(timeS[firstRow]!, startS ?? Number.NEGATIVE_INFINITY);
  const toS = Math.min(timeS[lastRow]!, endS ?? Number.POSITIVE_INFINITY);
  const atStartS = summed.sum.firstS - fromS;
  const atEndS = toS - summed.sum.lastS;
  return Math.max(atStartS, atEndS) > summed.limitS ? sentences.LOWER_BOUND_MISSING_ENDS : null;
}

function remarks(
  gaps: readonly BridgedGap[],
  stuck: readonly BridgedGap[],
  offsetA: number,
): { why?: string; bound?: "interval" } {
  const texts: string[] = [];
  if (gaps.length > 0) texts.push(sentences.bridged(total(gaps, (gap) => gap.seconds)));
  if (stuck.length > 0) texts.push(sentences.stuckFor(total(stuck, (gap) => gap.seconds)));
  if (offsetA < 0) texts.push(sentences.lifted(offsetA));
  if (texts.length === 0) return {};
  return { why: texts.join("; "), ...(gaps.length + stuck.length > 0 ? { bound: "interval" as const } : {}) };
}

function total<T>(items: readonly T[], amountOf: (item: T) => number): number {
  return items.reduce((sum, item) => sum + amountOf(item), 0);
}
