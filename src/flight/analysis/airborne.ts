import { medianInPlace, scaledMad, selectInPlace } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { RowRange } from "./segments.ts";

/** One logged quantity that tells air from ground, with the levels that separate them. */
export interface AirborneSense {
  readonly channel: "altitude" | "airspeed" | "groundSpeed";
  readonly values: Float64Array;
  /** Level on the ground before and after the flight, in the channel's unit. */
  readonly groundBefore: number;
  readonly groundAfter: number;
  /** Above ground by more than this: airborne. */
  readonly margin: number;
}

/** A channel that ranges over less than this never left the ground: metres, metres per second. */
const SMALLEST_RANGE: Readonly<Record<AirborneSense["channel"], number>> = {
  altitude: 4,
  airspeed: 6,
  groundSpeed: 6,
};
/**
 * Share of the flight's highest speed below which the aircraft has landed. Airspeed on the ground includes
 * the wind; ground speed on approach lacks it (common practice, no published source).
 */
const FLYING_SHARE = { airspeed: 0.45, groundSpeed: 0.3 } as const;
const LOWEST_ALTITUDE_MARGIN_M = 2;
const HIGHEST_ALTITUDE_MARGIN_M = 5;
const GROUND_WINDOW_S = 10;

/**
 * What shows air from ground in these rows, best first: altitude, airspeed, ground speed. Empty when none
 * is logged or none of them moves. `runStartS` and `runEndS` bound the motor's running.
 */
export function airborneSenses(
  recording: Recording,
  rows: RowRange,
  runStartS: number,
  runEndS: number,
): readonly AirborneSense[] {
  const senses: AirborneSense[] = [];
  for (const channel of ["altitude", "airspeed", "groundSpeed"] as const) {
    const sense = senseOf(recording, channel, rows, runStartS, runEndS);
    if (sense) senses.push(sense);
  }
  return senses;
}

/** True when the log holds a channel that would have shown a flight in these rows. */
export function couldShowFlight(recording: Recording, rows: RowRange): boolean {
  return (["altitude", "airspeed"] as const).some((channel) => {
    const values = workingChannel(recording, channel);
    return values !== null && isAlive(values, rows);
  });
}

function senseOf(
  recording: Recording,
  channel: AirborneSense["channel"],
  rows: RowRange,
  runStartS: number,
  runEndS: number,
): AirborneSense | null {
  const values = workingChannel(recording, channel);
  if (values === null) return null;
  const [low, high] = robustRange(values, rows);
  if (!(high - low >= SMALLEST_RANGE[channel])) return null;
  const before = groundLevel(recording, values, rows, runStartS - GROUND_WINDOW_S, runStartS);
  const after = groundLevel(recording, values, rows, runEndS, runEndS + GROUND_WINDOW_S);
  if (channel !== "altitude") {
    return { channel, values, groundBefore: 0, groundAfter: 0, margin: FLYING_SHARE[channel] * high };
  }
  const groundBefore = before?.level ?? after?.level ?? low;
  const groundAfter = after?.level ?? before?.level ?? low;
  const noise = 4 * Math.max(before?.noise ?? 0, after?.noise ?? 0);
  const margin = Math.max(LOWEST_ALTITUDE_MARGIN_M, Math.min(HIGHEST_ALTITUDE_MARGIN_M, noise));
  return { channel, values, groundBefore, groundAfter, margin };
}

/** Ends of the range without the outermost 2 % of the values; a sparse sample of the rows is enough. */
function robustRange(values: Float64Array, rows: RowRange): readonly [number, number] {
  const stride = Math.max(1, Math.floor((rows.lastRow - rows.firstRow) / 5000));
  const every = new Float64Array(Math.max(0, Math.floor((rows.lastRow - rows.firstRow) / stride) + 1));
  let count = 0;
  for (let row = rows.firstRow; row <= rows.lastRow; row += stride) {
    if (!Number.isNaN(values[row]!)) every[count++] = values[row]!;
  }
  if (count === 0) return [Number.NaN, Number.NaN];
  const sample = every.subarray(0, count);
  const cut = Math.floor(0.02 * count);
  return [selectInPlace(sample, cut), selectInPlace(sample, count - 1 - cut)];
}

function isAlive(values: Float64Array, rows: RowRange): boolean {
  let first = Number.NaN;
  for (let row = rows.firstRow; row <= rows.lastRow; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(first)) first = value;
    else if (value !== first) return true;
  }
  return false;
}

function groundLevel(
  recording: Recording,
  values: Float64Array,
  rows: RowRange,
  fromS: number,
  toS: number,
): { readonly level: number; readonly noise: number } | null {
  const near: number[] = [];
  for (let row = rows.firstRow; row <= rows.lastRow && recording.timeS[row]! <= toS; row++) {
    if (recording.timeS[row]! >= fromS && !Number.isNaN(values[row]!)) near.push(values[row]!);
  }
  if (near.length < 3) return null;
  const level = medianInPlace(Float64Array.from(near));
  return { level, noise: scaledMad(near, level) };
}

/** How far a row is above the ground that the sense knows, in its unit; NaN where the row says nothing. */
export function aboveGround(sense: AirborneSense, row: number, share: number): number {
  return sense.values[row]! - sense.groundBefore - share * (sense.groundAfter - sense.groundBefore);
}
