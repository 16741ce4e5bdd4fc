import type { ChannelName } from "../../base/channels/index.ts";
import { median, quantile } from "../../base/statistics/index.ts";
import { lowRuns, type RowRun } from "./lowRuns.ts";
import { spreadOf } from "./spread.ts";
import { recoversLessThanLoad } from "./voltsAfterDrop.ts";

/** A log whose current spans less shows no load that could be missed. */
const LEAST_SPAN_A = 5;
/** What a sensor without signal reads above the lowest of the log: noise, and a share of the span. */
const NOISE_A = 0.3;
const NOISE_SHARE = 0.02;
/** Load in the rows that teach which shaft speed needs current. */
const CLEAR_LOAD_SHARE = 0.1;
const LOW_QUANTILE = 0.05;
const FEWEST_TEACHING_ROWS = 20;
/** So long a shaft that turns as under load, without any current, is a sensor that stopped. */
export const LEAST_STOPPED_S = 10;

/**
 * Stretches in which the current sensor gives no signal while the motor runs on: shaft speed is that of load for
 * ten seconds, or there is none, and the volts do not recover as they do when load ends. The stretch reaches to
 * where the sensor reads again, or to the log's end.
 */
export function stoppedCurrent(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
): readonly RowRun[] {
  const amps = channels.get("current");
  if (amps === undefined) return [];
  const spread = spreadOf(amps);
  const span = spread.high - spread.low;
  if (!(span > LEAST_SPAN_A)) return [];
  const noiseA = spread.low + Math.max(NOISE_A, NOISE_SHARE * span);
  const runs = lowRuns(timeS, amps, noiseA, LEAST_STOPPED_S);
  if (runs.length === 0) return [];
  const revs = channels.get("shaftSpeed");
  const volts = channels.get("packVoltage");
  const loaded = revs && loadedSpeed(amps, revs, spread.low + CLEAR_LOAD_SHARE * span, volts === undefined);
  return runs.filter((run) => {
    if (revs !== undefined && loaded != null && secondsAbove(timeS, revs, loaded, run) < LEAST_STOPPED_S) {
      return false;
    }
    if (volts === undefined) return loaded != null;
    return recoversLessThanLoad(timeS, amps, volts, run);
  });
}

/** Shaft speed that in this log goes with a clear load; the middle of those where no volts can confirm it. */
function loadedSpeed(amps: Float64Array, revs: Float64Array, loadA: number, isAlone: boolean): number | null {
  const speeds: number[] = [];
  const stride = Math.max(1, Math.ceil(amps.length / 20_000));
  for (let row = 0; row < amps.length; row += stride) {
    if (amps[row]! > loadA && revs[row]! > 0) speeds.push(revs[row]!);
  }
  if (speeds.length < FEWEST_TEACHING_ROWS) return null;
  return isAlone ? median(speeds) : quantile(speeds, LOW_QUANTILE);
}

function secondsAbove(timeS: Float64Array, values: Float64Array, limit: number, run: RowRun): number {
  let seconds = 0;
  for (let row = run.firstRow + 1; row <= run.lastRow; row++) {
    if (values[row]! >= limit && values[row - 1]! >= limit)
      seconds += Math.min(2, timeS[row]! - timeS[row - 1]!);
  }
  return seconds;
}
