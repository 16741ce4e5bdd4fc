import { holeLimitS, type Recording } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";

/** One stretch of motor running: its rows (both included) and the times that bound it. */
export interface Run {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly startS: number;
  readonly endS: number;
}

/** A shorter blip (a bump of the stick, a stray sample) is no run. */
const SHORTEST_RUN_S = 0.5;

/** The runs inside one segment, in order. A run begins and ends half way to its neighbour row. */
export function runsOf(isRunning: Uint8Array, recording: Recording, segment: RowRange): readonly Run[] {
  const runs: Run[] = [];
  for (let row = segment.firstRow; row <= segment.lastRow; row++) {
    if (isRunning[row] === 0) continue;
    const firstRow = row;
    while (row < segment.lastRow && isRunning[row + 1] === 1) row++;
    const run = boundedRun(recording, segment, firstRow, row);
    if (run.endS - run.startS >= SHORTEST_RUN_S) runs.push(run);
  }
  return runs;
}

function boundedRun(recording: Recording, segment: RowRange, firstRow: number, lastRow: number): Run {
  const { timeS, stepS } = recording;
  const farthestS = holeLimitS(stepS);
  const first = timeS[firstRow]!;
  const last = timeS[lastRow]!;
  const before = firstRow > segment.firstRow ? timeS[firstRow - 1]! : first;
  const after = lastRow < segment.lastRow ? timeS[lastRow + 1]! : last;
  return {
    firstRow,
    lastRow,
    startS: first - before <= farthestS ? (first + before) / 2 : first,
    endS: after - last <= farthestS ? (last + after) / 2 : last,
  };
}
