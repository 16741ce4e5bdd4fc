import type { ReadLog } from "../reading/index.ts";
import type { Stamps } from "./stamps.ts";

/** What was found on the way; rows are those of the log. */
export interface ClockEvents {
  readonly wrapRows: number[];
  readonly backwardRows: number[];
  readonly backwardS: number[];
  /** First rows after a jump of unknown length. */
  readonly jumpRows: number[];
  readonly disorderedRows: number[];
  readonly replayedRows: number[];
  readonly loneStampRows: number[];
}

/** The walk through the rows: the first `kept` entries are in order, the rest is still as the log has it. */
export interface Walk {
  readonly log: ReadLog;
  readonly channels: readonly Float64Array[];
  readonly stamps: Stamps;
  readonly rows: Int32Array;
  readonly timeS: Float64Array;
  kept: number;
  offsetS: number;
  readonly events: ClockEvents;
}
