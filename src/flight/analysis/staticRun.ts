import { median, scaledMad } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { type AirborneSense, aboveGround } from "./airborne.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { FlightShape } from "./flightShape.ts";
import type { MotorRunning } from "./motorRunning.ts";
import type { RunGroup } from "./runGroups.ts";
import { ALTITUDE_CHANGES_THERE, NO_FULL_THROTTLE_ON_GROUND, NOTHING_RUNS } from "./sentences.ts";

/** The rows of the last 1.5 s of a full-throttle plateau on the ground, or why there is none. */
export type StaticRun =
  | {
      readonly firstRow: number;
      readonly lastRow: number;
      readonly startS: number;
      readonly endS: number;
      readonly why: null;
    }
  | { readonly firstRow: null; readonly why: string };

const PLATEAU_S = 1.5;
const FULL_THROTTLE_PCT = 98;
const SHARE_OF_HIGHEST = 0.95;
/** A plateau that runs on into flight power within this long is a take-off. */
const RUNS_ON_S = 5;
/** Single rows below the limit do not end a plateau. */
const BRIDGED_S = 0.3;
/** An altitude that moves more than this during a plateau is not on the ground, metres. */
const STILL_ALTITUDE_M = 2;

/**
 * The full-throttle plateau that static measures rest on: throttle of 98 % or more where it is logged, else
 * within 5 % of the log's highest one-second current. The last one before take-off that the motor does not
 * carry on from into flight; in a bench run the last one.
 */
export function staticRun(
  recording: Recording,
  group: RunGroup | null,
  running: MotorRunning | null,
  shape: FlightShape | null,
): StaticRun {
  if (group === null) return { firstRow: null, why: NOTHING_RUNS };
  const isFull = fullThrottle(recording, running);
  const latestS = shape === null ? group.endS : shape.takeOff.value - RUNS_ON_S;
  let last: StaticRun = { firstRow: null, why: NO_FULL_THROTTLE_ON_GROUND };
  if (isFull === null) return last;
  for (const { firstRow, lastRow } of plateaus(recording, group, isFull)) {
    const endS = recording.timeS[lastRow]!;
    if (endS > latestS) break;
    const startS = Math.max(recording.timeS[firstRow]!, endS - PLATEAU_S - 1e-6);
    if (endS - recording.timeS[firstRow]! + recording.stepS < PLATEAU_S) continue;
    const row = firstRowFrom(recording, firstRow, startS);
    if (isFlown(shape?.senses ?? [], row, lastRow)) continue;
    if (isLevel(recording, row, lastRow)) {
      last = { firstRow: row, lastRow, startS: recording.timeS[row]!, endS, why: null };
    } else if (last.firstRow === null) last = { firstRow: null, why: ALTITUDE_CHANGES_THERE };
  }
  return last;
}

type RowTest = (row: number) => boolean;

function fullThrottle(recording: Recording, running: MotorRunning | null): RowTest | null {
  const throttle = workingChannel(recording, "throttle");
  if (throttle) return (row) => throttle[row]! >= FULL_THROTTLE_PCT;
  const amps = workingChannel(recording, "current");
  if (amps === null || !running?.current) return null;
  const limitA = SHARE_OF_HIGHEST * running.current.top;
  return (row) => amps[row]! >= limitA;
}

function plateaus(
  recording: Recording,
  group: RunGroup,
  isFull: RowTest,
): readonly { readonly firstRow: number; readonly lastRow: number }[] {
  const { timeS, stepS } = recording;
  const bridgedS = Math.max(BRIDGED_S, 1.5 * stepS);
  const found: { firstRow: number; lastRow: number }[] = [];
  for (let row = group.rows.firstRow; row <= group.rows.lastRow; row++) {
    if (!isFull(row)) continue;
    const open = found.at(-1);
    if (open && timeS[row]! - timeS[open.lastRow]! <= bridgedS) open.lastRow = row;
    else found.push({ firstRow: row, lastRow: row });
  }
  return found;
}

function firstRowFrom(recording: Recording, firstRow: number, startS: number): number {
  let row = firstRow;
  while (recording.timeS[row]! < startS) row++;
  return row;
}

/** Whether a sense other than altitude is in the air in a row. */
function isFlown(senses: readonly AirborneSense[], firstRow: number, lastRow: number): boolean {
  const others = senses.filter(({ channel }) => channel !== "altitude");
  for (let row = firstRow; row <= lastRow; row++) {
    if (others.some((sense) => aboveGround(sense, row, 0) > sense.margin)) return true;
  }
  return false;
}

function isLevel(recording: Recording, firstRow: number, lastRow: number): boolean {
  const altitude = workingChannel(recording, "altitude");
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = firstRow; row <= lastRow; row++) {
    const metres = altitude?.[row] ?? Number.NaN;
    if (metres < low) low = metres;
    if (metres > high) high = metres;
  }
  return !(high - low > STILL_ALTITUDE_M);
}

/** Median of the known values over rows, with its standard error; null without two of them. */
export function plateauMedian(
  valueAtRow: (row: number) => number,
  firstRow: number,
  lastRow: number,
): { readonly value: number; readonly standardError: number } | null {
  const values: number[] = [];
  for (let row = firstRow; row <= lastRow; row++) {
    const value = valueAtRow(row);
    if (!Number.isNaN(value)) values.push(value);
  }
  if (values.length < 2) return null;
  const value = median(values);
  return { value, standardError: (1.2533 * scaledMad(values, value)) / Math.sqrt(values.length) };
}
