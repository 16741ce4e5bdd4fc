import type { Recording } from "../../log/recording/index.ts";
import { type AirborneSense, aboveGround } from "./airborne.ts";
import type { RowRange } from "./segments.ts";
import type { TimeSpan } from "./takeOff.ts";

/** From the first to the last row that a channel shows off the ground. */
export interface AirborneSpan {
  readonly sense: AirborneSense;
  readonly startS: number;
  readonly endS: number;
  readonly lastRow: number;
}

/** A shorter rise is noise or a gust. */
const SHORTEST_AIRBORNE_S = 3;
/** The last part of the descent, whose rate carries on to the ground. */
const DESCENT_S = 4;
const LONGEST_FLARE_S = 4;
/** The flare slows the descent: the last metres take about twice as long (common practice, no published source). */
const FLARE_FACTOR = 2;
/** Half-width of a touchdown that altitude or speed shows: flare, sensor lag and ground level. */
const SEEN_UNCERTAINTY_S = 4;

/** Where the best channel that shows it has the aircraft off the ground, or null when none does. */
export function airborneSpan(
  recording: Recording,
  rows: RowRange,
  senses: readonly AirborneSense[],
): AirborneSpan | null {
  for (const sense of senses) {
    const span = spanOf(recording, rows, sense);
    if (span) return span;
  }
  return null;
}

function spanOf(recording: Recording, rows: RowRange, sense: AirborneSense): AirborneSpan | null {
  const { timeS } = recording;
  let startS = Number.NaN;
  let lastRow = -1;
  let stretchStartS = Number.NaN;
  for (let row = rows.firstRow; row <= rows.lastRow; row++) {
    const share = (row - rows.firstRow) / Math.max(1, rows.lastRow - rows.firstRow);
    const height = aboveGround(sense, row, share);
    if (Number.isNaN(height)) continue;
    if (height <= sense.margin) stretchStartS = Number.NaN;
    else if (Number.isNaN(stretchStartS)) stretchStartS = timeS[row]!;
    if (!(timeS[row]! - stretchStartS >= SHORTEST_AIRBORNE_S)) continue;
    if (Number.isNaN(startS)) startS = stretchStartS;
    lastRow = row;
  }
  return lastRow < 0 ? null : { sense, startS, endS: timeS[lastRow]!, lastRow };
}

/** The touchdown: for altitude the last descent carried on to the ground, for speed its fall below flying. */
export function touchdownSeen(recording: Recording, rows: RowRange, span: AirborneSpan): TimeSpan {
  const value =
    span.sense.channel === "altitude" ? span.endS + descentLeftS(recording, rows, span) : span.endS;
  const reach = SEEN_UNCERTAINTY_S + recording.stepS;
  return { value, low: value - reach, high: value + reach };
}

function descentLeftS(recording: Recording, rows: RowRange, span: AirborneSpan): number {
  const { timeS } = recording;
  let row = span.lastRow;
  while (row > rows.firstRow && timeS[row]! > span.endS - DESCENT_S) row--;
  while (row < span.lastRow && Number.isNaN(span.sense.values[row]!)) row++;
  const left = aboveGround(span.sense, span.lastRow, 1);
  const rate = (aboveGround(span.sense, row, 1) - left) / (span.endS - timeS[row]!);
  if (!(rate > 0)) return LONGEST_FLARE_S / 2;
  return Math.min(LONGEST_FLARE_S, (FLARE_FACTOR * left) / rate);
}
