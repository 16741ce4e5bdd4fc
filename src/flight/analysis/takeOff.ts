import type { PowerStretch } from "./flightPower.ts";
import type { PowerTrace } from "./powerTrace.ts";

/** A moment and the times it lies between. Seconds since the first row. */
export interface TimeSpan {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** An advance of the throttle takes no longer. */
const LONGEST_ADVANCE_S = 4;
/** Half-width of the moment of an advance: its own length and the one-second mean. */
const ADVANCE_UNCERTAINTY_S = 1;

/**
 * The advance to take-off power: of the stretch in which the aircraft left the ground where that was seen,
 * else of the first stretch that is sustained.
 */
export function takeOffAt(
  trace: PowerTrace,
  level: number,
  stretches: readonly PowerStretch[],
  airborneStartS: number | null,
  sustainedS: number,
): TimeSpan {
  const stretch =
    airborneStartS === null
      ? stretches.find((one) => one.endS - one.startS >= sustainedS)
      : stretches.findLast((one) => one.startS <= airborneStartS);
  const index = onset(trace, level, stretch?.first ?? 0);
  const value = trace.timeS[index]!;
  const stepS = value - trace.timeS[lastKnownBefore(trace, index)]!;
  return { value, low: value - ADVANCE_UNCERTAINTY_S - stepS, high: value + ADVANCE_UNCERTAINTY_S };
}

/** The last row before `index` whose load is known: the advance may lie anywhere in a hole before it. */
function lastKnownBefore(trace: PowerTrace, index: number): number {
  let before = Math.max(0, index - 1);
  while (before > 0 && trace.isMissing[before] === 1) before--;
  return before;
}

/** Down the rising flank to where the load began to rise. */
function onset(trace: PowerTrace, level: number, crossing: number): number {
  const earliestS = trace.timeS[crossing]! - LONGEST_ADVANCE_S;
  let index = crossing;
  while (index > 0 && trace.timeS[index - 1]! >= earliestS) {
    const isFalling = trace.load[index - 1]! < trace.load[index]!;
    if (!isFalling || trace.load[index]! < level / 4) break;
    index--;
  }
  return index;
}
