import { medianInPlace } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { Run } from "./runs.ts";

/** What the pack's volts did in a pause: rested, jumped up (another pack), or too little is logged to tell. */
export type PackVoltsRise = "rested" | "jumped" | "unknown";

/**
 * Volts recover by some per cent in the first seconds after load, then by less than 1 % in minutes (measured
 * on logged flights of six cells: 0.6 % from 15 s to 60 s). A rise beyond this share is another pack.
 */
const JUMP_SHARE = 0.02;
/** Recovery is over its steep part after this long. */
const SETTLED_AFTER_S = 10;
const WINDOW_S = 10;

/** Compares the settled volts early in a pause with those just before the motor starts again. */
export function packVoltsRise(recording: Recording, before: Run, after: Run): PackVoltsRise {
  const volts = workingChannel(recording, "packVoltage");
  const pauseS = after.startS - before.endS;
  if (volts === null || pauseS < SETTLED_AFTER_S + WINDOW_S) return "unknown";
  const rows = { firstRow: before.lastRow + 1, lastRow: after.firstRow - 1 };
  const fromS = before.endS + SETTLED_AFTER_S;
  const early = medianBetween(recording, volts, rows, fromS, fromS + WINDOW_S);
  const late = medianBetween(recording, volts, rows, after.startS - WINDOW_S / 2, after.startS);
  if (early === null || late === null) return "unknown";
  return late > early * (1 + JUMP_SHARE) ? "jumped" : "rested";
}

function medianBetween(
  recording: Recording,
  volts: Float64Array,
  rows: { readonly firstRow: number; readonly lastRow: number },
  fromS: number,
  toS: number,
): number | null {
  const found: number[] = [];
  for (let row = rows.firstRow; row <= rows.lastRow; row++) {
    const atS = recording.timeS[row]!;
    if (atS >= fromS && atS <= toS && !Number.isNaN(volts[row]!)) found.push(volts[row]!);
  }
  return found.length < 3 ? null : medianInPlace(Float64Array.from(found));
}
