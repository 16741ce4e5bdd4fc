import type { ChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { ReadLog } from "../reading/index.ts";
import {
  currentNotices,
  deadNotices,
  holeNotices,
  missingNotices,
  type NoticeContext,
  repairNotices,
  stuckNotices,
} from "./channelNotices.ts";
import { honestClock } from "./clock.ts";
import { correctedChannels, correctionOf } from "./corrections.ts";
import { deadSensors, silentSensors } from "./deadSensors.ts";
import type { DeadChannel, Recording, Repair, SensorCorrections } from "./recording.ts";
import { withoutImpossible, withoutSpikes } from "./repairs.ts";
import { NEEDED, usableRows } from "./usableRows.ts";

/**
 * One log on one honest clock, sensors corrected, impossible values and lone spikes masked, holes and dead
 * sensors named. What was done is in `repairs` and `notices` (those of the reading first). Linear in the rows.
 *
 *   rows -> honest clock -> corrections -> impossible masked -> spikes masked -> usable rows, holes -> notices
 *
 * @param corrections `currentScale` multiplies amperes, `rpmDivisor` divides revolutions; both above 0
 */
export function recordLog(log: ReadLog, corrections: SensorCorrections): Recording {
  const clock = honestClock(log);
  const { timeS, sourceRows } = clock;
  const lineOfRow = (row: number) => log.lineOfRow(sourceRows[row]!);
  const followsJump = (row: number) => clock.jumpRows.has(sourceRows[row]!);
  const corrected = correctedChannels(log.channels, sourceRows, corrections);
  const silent = silentSensors(corrected);
  const possible = withoutImpossible(without(corrected, silent), lineOfRow);
  const before = usableRows(timeS, possible.channels, followsJump);
  const clean = withoutSpikes(timeS, possible.channels, before.stepS, lineOfRow);
  const { channels } = clean;
  const hasLostRows = clean.repairs.some((repair) => NEEDED.includes(repair.channel));
  const usable = hasLostRows ? usableRows(timeS, channels, followsJump) : before;
  const repairs = [...possible.repairs, ...clean.repairs].map((repair) => asLogged(repair, corrections));
  const dead = [...silent, ...deadSensors(timeS, channels, usable.stepS)];
  const context = { timeS, channels, stepS: usable.stepS, lineOfRow };
  return {
    rows: timeS.length,
    dataLines: log.dataLines,
    rowsUsed: usable.count,
    durationS: usable.durationS,
    timeS,
    channels,
    lineOfRow,
    clockTextOfRow: (row) => log.clock.textOfRow(sourceRows[row]!),
    stepS: usable.stepS,
    holes: usable.holes,
    repairs,
    dead,
    notices: [
      ...log.notices,
      ...clock.notices,
      ...holeNotices(usable.holes, lineOfRow),
      ...repairNotices(repairs),
      ...sensorNotices(context, dead),
    ],
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

function sensorNotices(context: NoticeContext, dead: readonly DeadChannel[]): Notice[] {
  const currentA = context.channels.get("current");
  const isAlive = !dead.some((one) => one.channel === ("current" satisfies ChannelName));
  const current = currentA !== undefined && isAlive ? currentNotices(currentA) : [];
  return [...deadNotices(dead), ...missingNotices(context), ...stuckNotices(context), ...current];
}
