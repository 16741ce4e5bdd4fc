import type { Notice } from "../../base/notices/index.ts";
import { isKnown } from "../../base/quantity/index.ts";
import { smallestStep } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { chargeBetween } from "./charge.ts";
import type { FlightContext } from "./flightContext.ts";
import { counterDisagrees } from "./sentences.ts";

/** A smaller charge says nothing about either sensor, mAh. */
const LEAST_MAH = 100;
/** A counter that turns round more often than this (a new battery, a restart) is not read. */
const MOST_RESTARTS = 2;

/**
 * A warning where the logged charge counter and the sum of the logged current lie further apart than the sum's own
 * interval and a step of the counter. The counter never replaces the sum: which of the two is right is not known.
 */
export function chargeCounterNotices(context: FlightContext): readonly Notice[] {
  const { recording, rows, facts } = context;
  const counter = workingChannel(recording, "chargeCounter");
  if (counter === null || workingChannel(recording, "current") === null) return [];
  const counted = countedIn(counter, rows.firstRow, rows.lastRow);
  if (counted === null || counted.mah < LEAST_MAH) return [];
  const { timeS } = recording;
  const summed = chargeBetween(recording, timeS[counted.firstRow]!, timeS[counted.lastRow]!, facts);
  if (!isKnown(summed) || summed.high === null || summed.low === null) return [];
  const step = smallestStep(counter);
  if (counted.mah >= summed.low - step && counted.mah <= summed.high + step) return [];
  return [counterDisagrees(counted.mah, summed)];
}

interface Counted {
  readonly mah: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** What a counter that counts up (or down) says was drawn; null where it does both. */
function countedIn(counter: Float64Array, firstRow: number, lastRow: number): Counted | null {
  let first = -1;
  let last = -1;
  const up = { mah: 0, steps: 0 };
  const down = { mah: 0, steps: 0 };
  for (let row = firstRow; row <= lastRow; row++) {
    if (Number.isNaN(counter[row]!)) continue;
    if (first < 0) first = row;
    const change = last < 0 ? 0 : counter[row]! - counter[last]!;
    const side = change > 0 ? up : down;
    if (change !== 0) side.steps++;
    side.mah += Math.abs(change);
    last = row;
  }
  if (first < 0 || Math.min(up.steps, down.steps) > MOST_RESTARTS) return null;
  return { mah: up.steps > down.steps ? up.mah : down.mah, firstRow: first, lastRow: last };
}
