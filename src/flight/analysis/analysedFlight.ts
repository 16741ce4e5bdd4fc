import type { Notice } from "../../base/notices/index.ts";
import type { FlightLoad } from "./flightLoad.ts";
import type { HeatTrace } from "./heatTrace.ts";
import type { Measures } from "./measures.ts";
import type { WeakestPart } from "./packPart.ts";
import type { FlightPictures } from "./pictures.ts";

export type PhaseName = "rest" | "runUp" | "taxi" | "takeOff" | "flight" | "landing" | "after";

/** A stretch of one flight; phases of a flight follow each other without overlap. Seconds since the first row. */
export interface Phase {
  readonly phase: PhaseName;
  readonly startS: number;
  readonly endS: number;
}

/** Rows `first`..`last` (both included) that belong to one flight, and the times that bound them. */
export interface FlightWindow {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly windowStartS: number;
  readonly windowEndS: number;
}

export interface AnalysedFlight extends FlightWindow {
  readonly kind: "flight" | "benchRun";
  /** Motor running from `startS` to `endS`. */
  readonly startS: number;
  readonly endS: number;
  /** False when the log starts or ends under power. */
  readonly complete: boolean;
  /** The log's own clock at `startS` as written, or null. */
  readonly startedAt: string | null;
  /** Null for a bench run. */
  readonly takeOffS: number | null;
  readonly touchdownS: number | null;
  readonly phases: readonly Phase[];
  readonly measures: Measures;
  /** Null unless the log holds a whole flight and its current. */
  readonly load: FlightLoad | null;
  /** True where the charge left and the resting volts after landing cannot both be right; absent where they can. */
  readonly isChargeDoubtful?: true;
  /** Null for a bench run, and without current or controller temperature. */
  readonly heatTrace: HeatTrace | null;
  /** Cells, or two packs in series, side by side; null where the log does not hold each of them. */
  readonly weakestPart: WeakestPart | null;
  /** What the pictures of pack, controller, motor and propeller are drawn from. */
  readonly pictures: FlightPictures;
  readonly notices: readonly Notice[];
}
