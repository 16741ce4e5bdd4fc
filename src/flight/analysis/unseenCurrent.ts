import { missingStretches, type Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { LONGEST_BRIDGED_HOLE_S, type RowRange } from "./segments.ts";
import { sumBasis } from "./sumBasis.ts";

/** Seconds in which rows with current are too far apart for a straight line, by what can be made of them. */
export interface UnseenCurrent {
  /** In holes up to a minute with current on both sides. */
  readonly bridgedS: number;
  /** In longer ones, and where the current is missing up to an end of the rows. */
  readonly lostS: number;
}

/** How long the current of these rows is not seen; nothing in a log without current. */
export function unseenCurrent(recording: Recording, { firstRow, lastRow }: RowRange): UnseenCurrent {
  const amps = workingChannel(recording, "current");
  if (amps === null) return { bridgedS: 0, lostS: 0 };
  const { timeS } = recording;
  const limitS = sumBasis(recording, amps).limitOfCurrentS;
  const part = amps.subarray(firstRow, lastRow + 1);
  const times = timeS.subarray(firstRow, lastRow + 1);
  let bridgedS = 0;
  let lostS = 0;
  for (const stretch of missingStretches(times, part, limitS)) {
    const isAtEnd = stretch.firstRow === 0 || stretch.lastRow === part.length - 1;
    if (isAtEnd || stretch.seconds > LONGEST_BRIDGED_HOLE_S) lostS += stretch.seconds;
    else bridgedS += stretch.seconds;
  }
  for (let row = 1; row < part.length; row++) {
    const stepS = times[row]! - times[row - 1]!;
    if (!(stepS > limitS) || Number.isNaN(part[row]! + part[row - 1]!)) continue;
    if (stepS > LONGEST_BRIDGED_HOLE_S) lostS += stepS;
    else bridgedS += stepS;
  }
  return { bridgedS, lostS };
}
