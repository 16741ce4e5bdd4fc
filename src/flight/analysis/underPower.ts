import type { Recording } from "../../log/recording/index.ts";
import type { MotorRunning } from "./motorRunning.ts";
import type { RunGroup } from "./runGroups.ts";
import type { PowerAtEnds } from "./usedSum.ts";

/** The motor at rest for this long beside a hole: what the hole hides is not this flight. */
const REST_BESIDE_HOLE_S = 10;

/**
 * Whether the log starts or ends under power around these runs. Beside a hole that ends a flight, a motor that
 * had not rested for 10 s counts as under power.
 */
export function powerAtEdges(recording: Recording, group: RunGroup, running: MotorRunning): PowerAtEnds {
  const { segment, runs, rows } = group;
  const { timeS } = recording;
  const firstRun = runs[0]!;
  const lastRun = runs.at(-1)!;
  const isFirst = rows.firstRow <= segment.firstRow;
  const isLast = rows.lastRow >= segment.lastRow;
  const restStartS = firstRun.startS - timeS[segment.firstRow]!;
  const restEndS = timeS[segment.lastRow]! - lastRun.endS;
  const starts = segment.startsAfterHole
    ? restStartS < REST_BESIDE_HOLE_S
    : runsAtEdge(running, segment.firstRow, 1);
  const ends = segment.endsAtHole ? restEndS < REST_BESIDE_HOLE_S : runsAtEdge(running, segment.lastRow, -1);
  return { startsUnderPower: isFirst && starts, endsUnderPower: isLast && ends };
}

/** Running in the first (or last) row or the one beside it: a single row may be a start-up reading. */
function runsAtEdge({ isRunning }: MotorRunning, row: number, step: 1 | -1): boolean {
  return isRunning[row] === 1 || isRunning[row + step] === 1;
}
