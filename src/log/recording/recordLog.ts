import type { ChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { ReadLog } from "../reading/index.ts";
import {
  ceilingNotices,
  currentNotices,
  deadNotices,
  failedNotices,
  holeNotices,
  missingNotices,
  type NoticeContext,
  probeNotices,
  repairNotices,
  reversedNotices,
  stuckNotices,
  withoutToldTwice,
} from "./channelNotices.ts";
import { type HonestClock, honestClock } from "./clock.ts";
import { correctedChannels, correctionOf } from "./corrections.ts";
import { type CurrentCeiling, currentCeiling } from "./currentCeiling.ts";
import { deadSensors, silentSensors } from "./deadSensors.ts";
import { type FailedStretch, failedCurrent, withoutFailed } from "./failedCurrent.ts";
import { type FailedProbe, failedProbes, withoutFailedProbes } from "./failedProbes.ts";
import type { DeadChannel, Hole, Recording, Repair, SensorCorrections } from "./recording.ts";
import { type Masking, withoutImpossible, withoutJumps, withoutSpikes } from "./repairs.ts";
import { reversedWitness } from "./reversedCurrent.ts";
import { NEEDED, usableRows } from "./usableRows.ts";

/**
 * One log on one honest clock, sensors corrected, impossible values and lone spikes masked, holes and dead
 * sensors named. What was done is in `repairs` and `notices` (those of the reading first). Linear in the rows.
 *
 *   rows -> honest clock -> corrections -> impossible masked -> spikes, jumps masked -> usable rows, holes -> notices
 *
 * @param stated `currentScale` multiplies amperes, `rpmDivisor` divides revolutions; both above 0
 * @param masking "inPlace" writes NaN into the log's own channels, for a caller that is done with them: a long log is
 *   then held once
 */
export function recordLog(log: ReadLog, stated: SensorCorrections, masking: Masking = "copy"): Recording {
  const clock = honestClock(log);
  const { timeS, sourceRows } = clock;
  const { lineOfRow, clockTextOfRow, followsJump } = tellers(log.lineOfRow, log.clock.textOfRow, clock);
  const asStated = correctedChannels(log.channels, sourceRows, stated);
  const turnedBy = reversedWitness(timeS, asStated);
  const corrections = turnedBy === null ? stated : { ...stated, currentScale: -stated.currentScale };
  const corrected = turnedBy === null ? asStated : correctedChannels(log.channels, sourceRows, corrections);
  const silent = silentSensors(corrected);
  const possible = withoutImpossible(without(corrected, silent), lineOfRow, masking);
  const before = usableRows(timeS, possible.channels, followsJump);
  const smooth = withoutSpikes(timeS, possible.channels, before.stepS, lineOfRow, masking);
  const steady = withoutJumps(timeS, smooth.channels, lineOfRow, masking);
  const clean = { channels: steady.channels, repairs: [...smooth.repairs, ...steady.repairs] };
  const dead = [...silent, ...deadSensors(timeS, clean.channels, before.stepS)];
  const isCurrentAlive = !dead.some((one) => one.channel === ("current" satisfies ChannelName));
  const ceiling = isCurrentAlive ? currentCeiling(clean.channels) : null;
  const failed = isCurrentAlive ? failedCurrent(timeS, clean.channels, ceiling?.ceilingA ?? null) : [];
  const alive = without(clean.channels, dead);
  const probes = failedProbes(timeS, alive);
  const channels = withoutFailedProbes(withoutFailed(clean.channels, failed), probes);
  const hasLostRows = failed.length > 0 || clean.repairs.some((repair) => NEEDED.includes(repair.channel));
  const usable = hasLostRows ? usableRows(timeS, channels, followsJump) : before;
  const repairs = [...possible.repairs, ...clean.repairs].map((repair) => asLogged(repair, corrections));
  const context = { timeS, channels, stepS: usable.stepS, lineOfRow };
  const missing = missingNotices({ ...context, channels: clean.channels });
  return {
    rows: timeS.length,
    dataLines: log.dataLines,
    rowsUsed: usable.count,
    durationS: usable.durationS,
    timeS,
    channels,
    lineOfRow,
    clockTextOfRow,
    stepS: usable.stepS,
    holes: usable.holes,
    repairs,
    dead,
    notices: [
      ...withoutToldTwice(log.notices, missing),
      ...clock.notices,
      ...reversedNotices(turnedBy),
      ...holeNotices(
        usable.holes.filter((hole) => !isToldAsFailed(hole, failed)),
        lineOfRow,
      ),
      ...repairNotices(repairs),
      ...sensorNotices(context, missing, { dead, ceiling, failed, probes }),
    ],
  };
}

/** What tells rows by the log's own; apart, so that a recording does not hold on to the log it came from. */
function tellers(
  lineInLog: (row: number) => number,
  textInLog: (row: number) => string | null,
  { sourceRows, jumpRows }: HonestClock,
) {
  const inLog = (row: number) => (sourceRows === null ? row : sourceRows[row]!);
  return {
    lineOfRow: (row: number) => lineInLog(inLog(row)),
    clockTextOfRow: (row: number) => textInLog(inLog(row)),
    followsJump: (row: number) => jumpRows.has(inLog(row)),
  };
}

function without(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  silent: readonly DeadChannel[],
): ReadonlyMap<ChannelName, Float64Array> {
  if (silent.length === 0) return channels;
  const gone = new Set(silent.map((one) => one.channel));
  return new Map([...channels].filter(([channel]) => !gone.has(channel)));
}

/** The value as the log wrote it, before the correction of its sensor. */
function asLogged(repair: Repair, corrections: SensorCorrections): Repair {
  return { ...repair, value: repair.value / correctionOf(repair.channel, corrections) };
}

function isToldAsFailed({ rowBefore, rowAfter }: Hole, failed: readonly FailedStretch[]): boolean {
  return failed.some(({ firstRow, lastRow }) => rowBefore >= firstRow - 1 && rowAfter <= lastRow + 1);
}

/** What was found wrong with sensors. */
interface SensorFaults {
  readonly dead: readonly DeadChannel[];
  readonly ceiling: CurrentCeiling | null;
  readonly failed: readonly FailedStretch[];
  readonly probes: readonly FailedProbe[];
}

/** @param missing of the channels before the rows of a failed sensor were taken out: those are told once */
function sensorNotices(
  context: NoticeContext,
  missing: readonly Notice[],
  { dead, ceiling, failed, probes }: SensorFaults,
): Notice[] {
  const currentA = context.channels.get("current");
  const isAlive = !dead.some((one) => one.channel === ("current" satisfies ChannelName));
  const current = currentA !== undefined && isAlive ? currentNotices(currentA) : [];
  return [
    ...deadNotices(dead),
    ...missing,
    ...failedNotices(failed, context.lineOfRow),
    ...probeNotices(probes, context),
    ...ceilingNotices(ceiling, context.lineOfRow),
    ...stuckNotices(context, ceiling?.ceilingA ?? null),
    ...current,
  ];
}
