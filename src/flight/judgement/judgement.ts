import type { Quantity } from "../../base/quantity/index.ts";
import type { MeasureName } from "../analysis/index.ts";

export type Verdict = "within" | "close" | "outside" | "not judged";

/** One measure held against the plan or against a limit. */
export interface Judgement {
  readonly line: MeasureName;
  readonly against: "plan" | "limit";
  /** The planned number or the limit, in the measure's unit; null when there is none to judge by. */
  readonly value: number | null;
  /** Which fact of the aircraft file it is, e.g. "controller.burstA". */
  readonly source: string;
  /** Which side is good: `atMost`, `atLeast`, or `around` (two-sided, within 10 %). */
  readonly sense: "atMost" | "atLeast" | "around";
  readonly measured: Quantity;
  readonly verdict: Verdict;
  readonly text: string;
}
