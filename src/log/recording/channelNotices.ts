import type { ChannelName } from "../../base/channels/index.ts";
import { firstLines, type Notice } from "../../base/notices/index.ts";
import { areBlankCells } from "../reading/index.ts";
import type { CurrentCeiling } from "./currentCeiling.ts";
import type { FailedStretch } from "./failedCurrent.ts";
import type { FailedProbe } from "./failedProbes.ts";
import { type MissingStretch, missingStretches } from "./missingStretches.ts";
import { type DeadChannel, type Hole, holeLimitS, type Repair } from "./recording.ts";
import { coarseStep } from "./resolution.ts";
import { negativeOffsetA, restCurrentA } from "./restCurrent.ts";
import * as sentences from "./sentences.ts";
import { stuckStretches } from "./stuckSensors.ts";

/** The repaired log, as far as notices look at it. */
export interface NoticeContext {
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  readonly stepS: number;
  readonly lineOfRow: (row: number) => number;
}

export function holeNotices(holes: readonly Hole[], lineOfRow: (row: number) => number): Notice[] {
  const notices: Notice[] = [];
  const named = holes.map((hole) => ({
    isUnknownLength: hole.isUnknownLength,
    seconds: hole.endS - hole.startS,
    lineBefore: lineOfRow(hole.rowBefore),
    lineAfter: lineOfRow(hole.rowAfter),
  }));
  const known = named.filter((hole) => !hole.isUnknownLength);
  if (known.length > 0) {
    const lines = firstLines(known.map((hole) => hole.lineAfter));
    notices.push({
      code: "gap",
      severity: "warning",
      text: sentences.gap(known),
      count: known.length,
      lines,
    });
  }
  for (const { isUnknownLength, lineBefore, lineAfter } of named) {
    if (!isUnknownLength) continue;
    const text = sentences.gapOfUnknownLength(lineBefore, lineAfter);
    notices.push({ code: "gap-unknown-length", severity: "warning", text, count: 1, lines: [lineAfter] });
  }
  return notices;
}

/** One notice for each channel and kind; every cell with its value stands in the list of repairs. */
export function repairNotices(repairs: readonly Repair[]): Notice[] {
  const groups = new Map<string, Repair[]>();
  for (const repair of repairs) {
    const key = `${repair.kind} ${repair.channel}`;
    const group = groups.get(key);
    if (group) group.push(repair);
    else groups.set(key, [repair]);
  }
  return [...groups.values()].map((cells) => ({
    code: `${cells[0]!.kind}-masked`,
    severity: "warning",
    text: sentences.masked(cells[0]!.kind, cells[0]!.channel, cells),
    count: cells.length,
    lines: firstLines(cells.map((cell) => cell.line)),
  }));
}

export function deadNotices(dead: readonly DeadChannel[]): Notice[] {
  return dead.map(({ why }) => ({
    code: "dead-sensor",
    severity: "warning",
    text: sentences.deadSensor(why),
  }));
}

/** @param witness the channel by which a current sensor fitted the other way round was recognised */
export function reversedNotices(witness: ChannelName | null): Notice[] {
  if (witness === null) return [];
  return [{ code: "current-reversed", severity: "warning", text: sentences.reversedCurrent(witness) }];
}

/** One notice for each set of stretches: channels that are blank together are told together. */
export function missingNotices(context: NoticeContext): Notice[] {
  const { timeS, channels, stepS, lineOfRow } = context;
  const groups = new Map<string, { channels: ChannelName[]; stretches: readonly MissingStretch[] }>();
  for (const [channel, values] of channels) {
    const stretches = missingStretches(timeS, values, holeLimitS(stepS));
    if (stretches.length === 0) continue;
    const key = stretches.map(({ firstRow, lastRow }) => `${firstRow} ${lastRow}`).join();
    const group = groups.get(key) ?? { channels: [], stretches };
    group.channels.push(channel);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ channels: together, stretches }) => {
    const told = stretches.map(({ seconds, firstRow, lastRow }) => ({
      seconds,
      firstLine: lineOfRow(firstRow),
      lastLine: lineOfRow(lastRow),
    }));
    return {
      code: "channel-missing",
      severity: "warning",
      text: sentences.missing(together, told),
      count: stretches.reduce((sum, { firstRow, lastRow }) => sum + lastRow - firstRow + 1, 0),
      lines: firstLines(told.map((one) => one.firstLine)),
    };
  });
}

/** Notices of the reading without those that the missing stretches tell better: the same cells, cell by cell. */
export function withoutToldTwice(reading: readonly Notice[], missing: readonly Notice[]): readonly Notice[] {
  return reading.filter(
    (notice) =>
      !areBlankCells(notice) ||
      !missing.some(({ count, lines }) => count === notice.count && lines?.[0] === notice.lines?.[0]),
  );
}

/** Sensors that stick for a stretch: told, not masked, as a true reading may repeat. */
export function stuckNotices(
  { timeS, channels, lineOfRow }: NoticeContext,
  ceilingA: number | null = null,
): Notice[] {
  const told = stuckStretches(timeS, channels).filter(
    ({ channel, value }) => channel !== "current" || value !== ceilingA,
  );
  return told.map(({ channel, witness, firstRow, lastRow, value, seconds }) => {
    const firstLine = lineOfRow(firstRow);
    const stretch = { value, seconds, firstLine, lastLine: lineOfRow(lastRow) };
    return {
      code: "sensor-stuck",
      severity: "warning",
      text: sentences.stuck(channel, witness, stretch),
      count: lastRow - firstRow + 1,
      lines: [firstLine],
    };
  });
}

/** Where the current sensor failed in flight: those rows count as missing. */
export function failedNotices(
  stretches: readonly FailedStretch[],
  lineOfRow: (row: number) => number,
): Notice[] {
  return stretches.map(({ firstRow, lastRow, low, high, seconds }) => {
    const firstLine = lineOfRow(firstRow);
    const lastLine = lineOfRow(lastRow);
    const text = sentences.currentFailed({ low, high, seconds, firstLine, lastLine });
    return {
      code: "sensor-stuck",
      severity: "warning",
      text,
      count: lastRow - firstRow + 1,
      lines: [firstLine],
    };
  });
}

/** A reading from before a sensor's first true one, in the first rows of a log, is worth a note only. */
const LONGEST_START_UP_S = 10;

/** Where a temperature probe failed: those rows count as missing. */
export function probeNotices(probes: readonly FailedProbe[], { timeS, lineOfRow }: NoticeContext): Notice[] {
  return probes.map((probe) => {
    const { firstRow, lastRow, channel } = probe;
    const isStartUp = firstRow === 0 && timeS[lastRow]! - timeS[0]! <= LONGEST_START_UP_S;
    const lines = { firstLine: lineOfRow(firstRow), lastLine: lineOfRow(lastRow) };
    const text =
      probe.kind === "jumped"
        ? sentences.probeJumped(channel, { ...probe, ...lines, jumpLine: lineOfRow(probe.jumpRow) })
        : sentences.probeStuck(channel, { ...probe, ...lines });
    const severity = isStartUp ? "note" : "warning";
    return { code: "probe-failed", severity, text, count: lastRow - firstRow + 1, lines: [lines.firstLine] };
  });
}

export function ceilingNotices(ceiling: CurrentCeiling | null, lineOfRow: (row: number) => number): Notice[] {
  if (ceiling === null) return [];
  const lines = ceiling.stretches.map((one) => lineOfRow(one.firstRow));
  const text = sentences.currentCeiling(ceiling.ceilingA, lines, ceiling.witness);
  return [{ code: "sensor-stuck", severity: "warning", text, count: lines.length, lines: firstLines(lines) }];
}

/** What is peculiar about the current sensor: coarse steps, a negative reading at rest. */
export function currentNotices(currentA: Float64Array): Notice[] {
  const notices: Notice[] = [];
  const stepA = coarseStep(currentA);
  if (stepA !== null) {
    const text = sentences.coarseResolution("current", stepA);
    notices.push({ code: "coarse-resolution", severity: "note", text });
  }
  const offsetA = negativeOffsetA(restCurrentA(currentA));
  if (offsetA < 0) {
    const text = sentences.negativeRestCurrent(offsetA);
    notices.push({ code: "negative-rest-current", severity: "warning", text });
  }
  return notices;
}
