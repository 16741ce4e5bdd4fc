import type { ChannelName } from "../../base/channels/index.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** One reading for this long and this many rows, while another channel moves much, is a sensor that stuck. */
const LEAST_STUCK_S = 10;
const LEAST_STUCK_ROWS = 20;
/** How much of its own 1st-99th percentile range the other channel must move. */
const CLEAR_MOVE_SHARE = 0.5;
/**
 * A motor that stops shows no current while its volts recover and its shaft slows: only speeding up tells, and
 * volts that fall again and again (once may be another pack).
 */
const IDLE_SHARE = 0.02;
const CLEAR_FALL_SHARE = 0.25;
/** Share of the volts themselves that a fall under load exceeds: less is noise, or a servo. */
const LEAST_FALL_SHARE = 0.01;
const FEWEST_FALLS = 2;

/** A stretch in which a sensor repeats one value while `witness` shows that it should move. */
export interface StuckStretch {
  readonly channel: ChannelName;
  readonly witness: ChannelName;
  readonly value: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly seconds: number;
}

/** Which channel tells on which. */
const WITNESSES: readonly (readonly [ChannelName, readonly ChannelName[]])[] = [
  ["current", ["shaftSpeed", "packVoltage"]],
  ["packVoltage", ["current"]],
  ["shaftSpeed", ["current"]],
];

/** Channels are never changed in place, and the repairs, the notices and the sums ask about the same ones. */
const known = new WeakMap<
  ReadonlyMap<ChannelName, Float64Array>,
  { readonly timeS: Float64Array; readonly stretches: readonly StuckStretch[] }
>();

/** Stretches with a sensor stuck (or at the end of its range), for sensors that do move elsewhere in the log. */
export function stuckStretches(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
): readonly StuckStretch[] {
  const before = known.get(channels);
  if (before?.timeS === timeS) return before.stretches;
  const stretches = soughtStretches(timeS, channels);
  known.set(channels, { timeS, stretches });
  return stretches;
}

function soughtStretches(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
): readonly StuckStretch[] {
  const found: StuckStretch[] = [];
  for (const [channel, witnesses] of WITNESSES) {
    const values = channels.get(channel);
    if (values === undefined) continue;
    const spread = spreadOf(values);
    const idle = idleReading(spread);
    if (!(spread.high > spread.low)) continue;
    for (const run of longRuns(timeS, values)) {
      const isIdle = channel !== "packVoltage" && run.value <= idle;
      const witness = witnesses.find((one) => movesMuch(one, channels.get(one), run, isIdle));
      if (witness !== undefined) found.push({ channel, witness, ...run });
    }
  }
  return found;
}

/** A reading up to this is that of a motor at rest. */
export function idleReading({ low, high }: Spread): number {
  return low + IDLE_SHARE * (high - low);
}

type Run = Omit<StuckStretch, "channel" | "witness">;

/** Long runs of rows with one value, missing rows passed over. */
function longRuns(timeS: Float64Array, values: Float64Array): Run[] {
  const runs: Run[] = [];
  let held = Number.NaN;
  let firstRow = -1;
  let lastRow = -1;
  let rows = 0;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (value !== held) {
      if (rows >= LEAST_STUCK_ROWS) addIfLong(runs, timeS, held, firstRow, lastRow);
      held = value;
      firstRow = row;
      rows = 0;
    }
    lastRow = row;
    rows++;
  }
  if (rows >= LEAST_STUCK_ROWS) addIfLong(runs, timeS, held, firstRow, lastRow);
  return runs;
}

function addIfLong(runs: Run[], timeS: Float64Array, value: number, firstRow: number, lastRow: number): void {
  const seconds = timeS[lastRow]! - timeS[firstRow]!;
  if (seconds >= LEAST_STUCK_S) runs.push({ value, firstRow, lastRow, seconds });
}

function movesMuch(
  witness: ChannelName,
  values: Float64Array | undefined,
  { firstRow, lastRow }: Run,
  isIdle: boolean,
): boolean {
  if (values === undefined) return false;
  const spread = spreadOf(values);
  if (isIdle && witness === "packVoltage") {
    const clearFall = Math.max(CLEAR_FALL_SHARE * (spread.high - spread.low), LEAST_FALL_SHARE * spread.high);
    return clearFall > 0 && fallsBy(clearFall, values, firstRow, lastRow) >= FEWEST_FALLS;
  }
  if (isIdle && witness !== "shaftSpeed") return false;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let largestRise = 0;
  for (let row = firstRow; row <= lastRow; row++) {
    const value = values[row]!;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
    if (value - lowest > largestRise) largestRise = value - lowest;
  }
  const move = isIdle ? largestRise : highest - lowest;
  return move > CLEAR_MOVE_SHARE * (spread.high - spread.low);
}

/** How often the values fall by `clear`, rising by as much in between. Missing rows are passed over. */
function fallsBy(clear: number, values: Float64Array, firstRow: number, lastRow: number): number {
  let falls = 0;
  let isDown = false;
  let turn = Number.NaN;
  for (let row = firstRow; row <= lastRow; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    const isFarther = isDown ? value < turn : value > turn;
    if (Number.isNaN(turn) || isFarther) turn = value;
    else if (Math.abs(value - turn) >= clear) {
      if (!isDown) falls++;
      isDown = !isDown;
      turn = value;
    }
  }
  return falls;
}
