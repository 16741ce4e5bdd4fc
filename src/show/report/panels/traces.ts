import { holeLimitS } from "../../../log/recording/index.ts";
import { gapsOf, type Trace } from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";

/** A row array as a trace over this flight's window, its gaps found by the rule the sums use. */
export function traceOf(context: FlightContext, y: ArrayLike<number>): Trace {
  const { recording, analysed } = context;
  const range = { first: analysed.firstRow, last: analysed.lastRow };
  const gaps = gapsOf(recording.timeS, y, range, holeLimitS(recording.stepS));
  return { x: recording.timeS, y, ...range, gaps };
}
