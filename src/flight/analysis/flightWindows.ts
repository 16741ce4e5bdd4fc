import type { Recording } from "../../log/recording/index.ts";
import type { MotorRunning } from "./motorRunning.ts";
import { type RunGroup, runGroups } from "./runGroups.ts";
import { runsOf } from "./runs.ts";
import type { RowRange } from "./segments.ts";
import { segmentsOf } from "./segments.ts";

/** Rows and times of one flight's window, and the runs in it; null when nothing runs. */
export interface WindowRows {
  readonly rows: RowRange;
  readonly group: RunGroup | null;
  readonly windowStartS: number;
  readonly windowEndS: number;
}

/** Windows in order of time that hold every row once. A stretch in which nothing runs joins its neighbour. */
export function flightWindows(recording: Recording, running: MotorRunning | null): readonly WindowRows[] {
  const groups = running === null ? [] : groupsOf(recording, running);
  if (groups.length === 0) return [windowOf(recording, null, 0, recording.rows - 1)];
  return groups.map((group, index) => {
    const next = groups[index + 1];
    const firstRow = index === 0 ? 0 : group.rows.firstRow;
    return windowOf(recording, group, firstRow, next ? next.rows.firstRow - 1 : recording.rows - 1);
  });
}

function groupsOf(recording: Recording, running: MotorRunning): readonly RunGroup[] {
  return segmentsOf(recording).flatMap((segment) =>
    runGroups(recording, segment, runsOf(running.isRunning, recording, segment)),
  );
}

/** A border inside a pause lies half way between its two rows; the log's ends are its first and last row. */
function windowOf(
  { timeS, rows }: Recording,
  group: RunGroup | null,
  firstRow: number,
  lastRow: number,
): WindowRows {
  const border = (row: number) => (timeS[row]! + timeS[row + 1]!) / 2;
  return {
    rows: { firstRow, lastRow },
    group: group && { ...group, rows: { firstRow, lastRow } },
    windowStartS: firstRow === 0 ? (timeS[0] ?? 0) : border(firstRow - 1),
    windowEndS: lastRow === rows - 1 ? (timeS[lastRow] ?? 0) : border(lastRow),
  };
}
