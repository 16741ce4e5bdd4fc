import type { Quantity } from "../../base/quantity/index.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import { type LoadLines, loadLines } from "./loadLines.ts";
import type { Measures } from "./measures.ts";
import { isCurrentEstimated } from "./measures.ts";
import type { InFlightLoad } from "./propellerLoadInFlight.ts";
import type { WrongSetting } from "./wrongSetting.ts";

/** What a section on motor and propeller shows beside the measures. */
export interface LoadView {
  /** Null with the reason where the lines cannot be drawn. */
  readonly lines: LoadLines | null;
  readonly why: string | null;
  readonly inFlight: InFlightLoad;
  readonly wrongSetting: WrongSetting | null;
  readonly offeredKv: Quantity | null;
  /** Share of the pack's volts at the motor on the static run, by speed and kv; 1 is full throttle. */
  readonly staticDuty: number | null;
  /** Nobody logged the current: it was estimated from speed, volts and the propeller. */
  readonly isCurrentEstimated: boolean;
}

export function loadView(context: FlightContext, identified: Identified, measures: Measures): LoadView {
  const { load } = identified.parts;
  const drawn = loadLines(context, identified, measures);
  return {
    ...drawn,
    inFlight: load.inFlight,
    wrongSetting: load.wrongSetting,
    offeredKv: load.offeredKv,
    staticDuty: load.staticDuty,
    isCurrentEstimated: isCurrentEstimated(measures),
  };
}
