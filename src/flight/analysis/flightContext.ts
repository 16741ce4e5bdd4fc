import type { Facts } from "../../aircraft/facts.ts";
import type { Recording } from "../../log/recording/index.ts";
import type { DayFacts } from "./dayFacts.ts";
import type { FlightShape } from "./flightShape.ts";
import type { MotorRunning } from "./motorRunning.ts";
import type { RestVoltage } from "./restVoltage.ts";
import type { RunGroup } from "./runGroups.ts";
import type { RowRange } from "./segments.ts";
import type { StaticRun } from "./staticRun.ts";

/** All that the measures of one flight rest on, found once. */
export interface FlightContext {
  readonly recording: Recording;
  readonly facts: Facts;
  readonly day: DayFacts;
  /** Rows of the window: every row of the log belongs to one flight. */
  readonly rows: RowRange;
  /** Null when nothing runs in the window. */
  readonly group: RunGroup | null;
  /** Null when neither current nor shaft speed can tell. */
  readonly running: MotorRunning | null;
  /** Null for a bench run. */
  readonly shape: FlightShape | null;
  readonly startsUnderPower: boolean;
  readonly endsUnderPower: boolean;
  readonly restBefore: RestVoltage;
  readonly restAfter: RestVoltage;
  readonly staticRun: StaticRun;
  /** Cells in series: of the aircraft file, else as many as are logged; null when not known. */
  readonly cells: number | null;
}

/** Rows from the first to the last of the motor running; the whole window when nothing runs. */
export function runningRows({ group, rows }: FlightContext): RowRange {
  const first = group?.runs[0];
  const last = group?.runs.at(-1);
  return first && last ? { firstRow: first.firstRow, lastRow: last.lastRow } : rows;
}
