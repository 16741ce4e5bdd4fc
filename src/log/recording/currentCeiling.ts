import type { ChannelName } from "../../base/channels/index.ts";
import type { RowRun } from "./lowRuns.ts";
import { smallestStep } from "./resolution.ts";
import { spreadOf } from "./spread.ts";

/** The highest reading, repeated in stretches of so many rows, */
const FEWEST_ROWS = 3;
const FEWEST_STRETCHES = 2;
const FEWEST_ROWS_IN_ALL = 15;
/** by a sensor with finer steps than this share of it: a coarse one repeats its values anyway. */
const FINE_SHARE = 0.005;
/** Shaft speed or volts move by this share of their spread meanwhile. */
const MOVE_SHARE = 0.02;
const LEAST_CEILING_A = 5;

/** The end of the current sensor's range. */
export interface CurrentCeiling {
  readonly ceilingA: number;
  readonly stretches: readonly RowRun[];
  readonly witness: ChannelName;
}

/** The reading that the current never exceeds and sits at again and again while another channel moves, or null. */
export function currentCeiling(channels: ReadonlyMap<ChannelName, Float64Array>): CurrentCeiling | null {
  const amps = channels.get("current");
  if (amps === undefined) return null;
  let ceilingA = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < amps.length; row++) if (amps[row]! > ceilingA) ceilingA = amps[row]!;
  if (!(ceilingA >= LEAST_CEILING_A) || smallestStep(amps) > FINE_SHARE * ceilingA) return null;
  const stretches = stretchesAt(amps, ceilingA);
  const rows = stretches.reduce((sum, one) => sum + one.lastRow - one.firstRow + 1, 0);
  if (stretches.length < FEWEST_STRETCHES || rows < FEWEST_ROWS_IN_ALL) return null;
  const witness = (["shaftSpeed", "packVoltage"] as const).find((one) =>
    movesIn(channels.get(one), stretches),
  );
  return witness === undefined ? null : { ceilingA, stretches, witness };
}

function stretchesAt(amps: Float64Array, value: number): RowRun[] {
  const stretches: RowRun[] = [];
  for (let row = 0; row < amps.length; row++) {
    if (amps[row] !== value) continue;
    const firstRow = row;
    while (amps[row + 1] === value) row++;
    if (row - firstRow + 1 >= FEWEST_ROWS) stretches.push({ firstRow, lastRow: row });
  }
  return stretches;
}

function movesIn(values: Float64Array | undefined, stretches: readonly RowRun[]): boolean {
  if (values === undefined) return false;
  const spread = spreadOf(values);
  const least = MOVE_SHARE * (spread.high - spread.low);
  return stretches.some(({ firstRow, lastRow }) => {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let row = firstRow; row <= lastRow; row++) {
      if (values[row]! < low) low = values[row]!;
      if (values[row]! > high) high = values[row]!;
    }
    return high - low > least;
  });
}
