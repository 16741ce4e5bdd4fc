import { type ChannelName, channelFacts } from "../../base/channels/index.ts";
import { spreadOf } from "./spread.ts";

/** Load of this size as negative amps, */
const RUNNING_A = 5;
/** this many times as large as the positive ones: braking never gives back as much. */
const REVERSED_RATIO = 2;
/** Changes over about a second are compared. */
const DIFFERENCE_S = 1;
/** A witness speaks clearly beyond this correlation of the changes. */
const CLEAR_CORRELATION = 0.5;

/** True when the load shows as negative amps, far beyond any offset. */
export function isNegativeUnderLoad(amps: Float64Array): boolean {
  const { low, high } = spreadOf(amps);
  return low < -RUNNING_A && -low > REVERSED_RATIO * Math.abs(high);
}

/**
 * The channel that shows that the current sensor is fitted the other way round: volts that fall as the current
 * grows negative, or a shaft that speeds up. Null where the current is not negative under load or nothing shows it.
 */
export function reversedWitness(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
): ChannelName | null {
  const amps = channels.get("current");
  if (amps === undefined || !isNegativeUnderLoad(amps)) return null;
  const turned = (["packVoltage", "cellVoltage1", "shaftSpeed"] as const).find((channel) => {
    const values = channels.get(channel);
    const sign = channel === "shaftSpeed" ? -1 : 1;
    return values !== undefined && sign * correlation(timeS, amps, values, channel) > CLEAR_CORRELATION;
  });
  return turned ?? null;
}

/** Of the changes of both over a second; impossible values of the witness are passed over. */
function correlation(
  timeS: Float64Array,
  amps: Float64Array,
  values: Float64Array,
  channel: ChannelName,
): number {
  const [low, high] = channelFacts(channel).possible;
  let product = 0;
  let ofAmps = 0;
  let ofValues = 0;
  let tail = 0;
  for (let row = 1; row < timeS.length; row++) {
    while (tail + 1 < row && timeS[tail + 1]! <= timeS[row]! - DIFFERENCE_S) tail++;
    if (timeS[row]! - timeS[tail]! > 2 * DIFFERENCE_S) continue;
    const isPossible =
      Math.min(values[row]!, values[tail]!) >= low && Math.max(values[row]!, values[tail]!) <= high;
    const change = amps[row]! - amps[tail]!;
    if (!isPossible || Number.isNaN(change)) continue;
    const other = values[row]! - values[tail]!;
    product += change * other;
    ofAmps += change * change;
    ofValues += other * other;
  }
  return ofAmps > 0 && ofValues > 0 ? product / Math.sqrt(ofAmps * ofValues) : 0;
}
