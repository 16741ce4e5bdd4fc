import type { Recording } from "../../log/recording/index.ts";
import type { MotorRunning } from "./motorRunning.ts";
import type { RunGroup } from "./runGroups.ts";
import type { PowerAtEnds } from "./usedSum.ts";

/** The motor at rest for this long before a hole: what the hole hides is not this flight. */
const REST_BEFORE_HOLE_S = 10;
/** A motor seen at rest for this long after a hole starts from rest. */
const REST_AFTER_HOLE_S = 3;
/** In logs faster than this a single row beside the end may be a start-up reading; a slower row is a rest of its own. */
const START_UP_S = 2;

/**
 * Whether the log starts or ends under power around these runs. Before a hole that ends a flight, a motor that
 * had not rested for 10 s counts as under power; after one, a motor that rests for 3 s in view starts from rest.
 */
export function powerAtEdges(recording: Recording, group: RunGroup, running: MotorRunning): PowerAtEnds {
  const { segment, runs, rows } = group;
  const { timeS } = recording;
  const firstRun = runs[0]!;
  const lastRun = runs.at(-1)!;
  const isFirst = rows.firstRow <= segment.firstRow;
  const isLast = rows.lastRow >= segment.lastRow;
  const restStartS = timeS[firstRun.firstRow]! - timeS[segment.firstRow]!;
  const restEndS = timeS[segment.lastRow]! - timeS[lastRun.lastRow]!;
  const starts = segment.startsAfterHole
    ? restStartS < REST_AFTER_HOLE_S
    : runsAtEdge(recording, running, segment.firstRow, 1);
  const ends = segment.endsAtHole
    ? restEndS < REST_BEFORE_HOLE_S
    : runsAtEdge(recording, running, segment.lastRow, -1);
  return { startsUnderPower: isFirst && starts, endsUnderPower: isLast && ends };
}

/** Running in the first (or last) row, or in the one close beside it. */
function runsAtEdge({ timeS }: Recording, { isRunning }: MotorRunning, row: number, step: 1 | -1): boolean {
  const isClose = Math.abs(timeS[row + step]! - timeS[row]!) <= START_UP_S;
  return isRunning[row] === 1 || (isClose && isRunning[row + step] === 1);
}
