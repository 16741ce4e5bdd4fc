import { unknown } from "../../base/quantity/index.ts";
import type { FlightContext } from "./flightContext.ts";
import { MEASURE_UNITS, type Measures } from "./measures.ts";
import { NOT_IDENTIFIED } from "./sentences.ts";

/** How far a probe's reading lags behind the controller at its peak, with its half-width. */
export interface LagCorrection {
  readonly valueC: number;
  readonly halfWidthC: number;
}

export type IdentifiedName =
  | "packResistanceMohm"
  | "packResistance10sMohm"
  | "controllerTimeConstantS"
  | "controllerRisePerA2"
  | "propellerPowerCoefficient"
  | "motorEfficiencyPct";

/** What the log says about the parts themselves. */
export interface Identified {
  readonly measures: Pick<Measures, IdentifiedName>;
  /** Null where the heating could not be fitted: the peak then stands as logged. */
  readonly peakLag: LagCorrection | null;
}

/** Pack resistance, controller heating, propeller and motor of one flight, each null with its reason. */
export function identifiedMeasures(_context: FlightContext): Identified {
  const none = (name: IdentifiedName) => unknown(MEASURE_UNITS[name], NOT_IDENTIFIED);
  return {
    measures: {
      packResistanceMohm: none("packResistanceMohm"),
      packResistance10sMohm: none("packResistance10sMohm"),
      controllerTimeConstantS: none("controllerTimeConstantS"),
      controllerRisePerA2: none("controllerRisePerA2"),
      propellerPowerCoefficient: none("propellerPowerCoefficient"),
      motorEfficiencyPct: none("motorEfficiencyPct"),
    },
    peakLag: null,
  };
}
