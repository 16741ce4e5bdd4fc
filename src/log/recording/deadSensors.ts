import { type ChannelName, channelFacts, isCellChannel } from "../../base/channels/index.ts";
import { type DeadChannel, holeLimitS } from "./recording.ts";
import { isNegativeUnderLoad } from "./reversedCurrent.ts";
import * as sentences from "./sentences.ts";
import { spreadOf } from "./spread.ts";

/** Moves that show the motor runs: the range of shaft speed, of amps, and of volts as a share. */
const RUNNING_RPM = 1000;
const RUNNING_A = 5;
const RUNNING_VOLTS_SHARE = 0.03;
/** A probe that is silent for this long under current is dead; a shorter run may warm nothing. */
const TEMPERATURE_PATIENCE_S = 30;
/** One value in fewer rows than this says nothing about a sensor. */
const LEAST_ROWS = 10;

const WARMED_BY_CURRENT: readonly ChannelName[] = [
  "controllerTemperature",
  "motorTemperature",
  "packTemperature",
];

/**
 * Sensors that write one value all along while the rest of the log shows that it should move: current while
 * the shaft turns, volts and shaft speed while current flows, a temperature under half a minute of current.
 * A temperature that is updated slowly does move, so it is alive.
 */
export function deadSensors(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stepS: number,
): DeadChannel[] {
  const evidence = runningEvidence(timeS, channels, stepS);
  const dead: DeadChannel[] = [];
  for (const [channel, values] of channels) {
    const value = onlyValue(values);
    if (value === null) continue;
    const why = whyDead(channel, value, evidence);
    if (why !== null) dead.push({ channel, why });
  }
  const amps = channels.get("current");
  if (amps !== undefined && isNegativeUnderLoad(amps))
    dead.push({ channel: "current", why: sentences.REVERSED_CURRENT });
  return dead;
}

/** Sensors none of whose values can be meant (an empty column filled with 0, a probe that is not plugged in). */
export function silentSensors(channels: ReadonlyMap<ChannelName, Float64Array>): DeadChannel[] {
  const silent: DeadChannel[] = [];
  for (const [channel, values] of channels) {
    const [low, high] = channelFacts(channel).possible;
    let first = Number.NaN;
    let rows = 0;
    if (values.some((value) => value >= low && value <= high)) continue;
    for (const value of values) if (!Number.isNaN(value) && rows++ === 0) first = value;
    if (rows >= LEAST_ROWS) silent.push({ channel, why: sentences.silent(channel, first) });
  }
  return silent;
}

interface RunningEvidence {
  readonly turns: boolean;
  readonly sags: boolean;
  readonly draws: boolean;
  readonly secondsUnderCurrent: number;
}

function runningEvidence(
  timeS: Float64Array,
  channels: ReadonlyMap<ChannelName, Float64Array>,
  stepS: number,
): RunningEvidence {
  const rangeOf = (channel: ChannelName) => {
    const values = channels.get(channel);
    const spread = values === undefined ? { low: 0, high: 0 } : spreadOf(values);
    return { width: spread.high - spread.low, high: spread.high };
  };
  const volts = rangeOf("packVoltage");
  return {
    turns: rangeOf("shaftSpeed").width > RUNNING_RPM,
    sags: volts.width > RUNNING_VOLTS_SHARE * volts.high,
    draws: rangeOf("current").width > RUNNING_A,
    secondsUnderCurrent: secondsAbove(timeS, channels.get("current"), RUNNING_A, holeLimitS(stepS)),
  };
}

function whyDead(channel: ChannelName, value: number, evidence: RunningEvidence): string | null {
  const { turns, sags, draws, secondsUnderCurrent } = evidence;
  if (channel === "current") {
    const sign = turns ? "the shaft turns" : sags ? "the volts sag" : null;
    return sign === null ? null : sentences.deadWhile(channel, value, sign);
  }
  if (channel === "shaftSpeed" || channel === "packVoltage" || isCellChannel(channel)) {
    return draws ? sentences.deadWhile(channel, value, "the current moves") : null;
  }
  if (WARMED_BY_CURRENT.includes(channel) && secondsUnderCurrent >= TEMPERATURE_PATIENCE_S) {
    return sentences.deadWhile(channel, value, "current flows");
  }
  return null;
}

/** The value that every row of the channel holds, or null when they differ or are few. */
function onlyValue(values: Float64Array): number | null {
  let only: number | null = null;
  let rows = 0;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (only !== null && value !== only) return null;
    only = value;
    rows++;
  }
  return rows < LEAST_ROWS ? null : only;
}

function secondsAbove(
  timeS: Float64Array,
  values: Float64Array | undefined,
  limit: number,
  longestS: number,
): number {
  if (values === undefined) return 0;
  let seconds = 0;
  for (let row = 1; row < values.length; row++) {
    const stepS = timeS[row]! - timeS[row - 1]!;
    if (values[row]! > limit && values[row - 1]! > limit && stepS <= longestS) seconds += stepS;
  }
  return seconds;
}
