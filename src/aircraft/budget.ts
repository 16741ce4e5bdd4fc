import { DEFAULTS } from "./defaults.ts";

/** What was planned: the pilot's power budget. A line the pilot did not plan is null. */
export interface Planned {
  readonly staticCurrentA: number | null;
  readonly staticPowerW: number | null;
  readonly staticRpm: number | null;
  readonly meanCurrentA: number | null;
  readonly flightTimeS: number | null;
  readonly chargeUsedMah: number | null;
  readonly minCellV: number | null;
  readonly controllerPeakC: number | null;
}

export interface Budget {
  readonly planned: Planned;
  /** Share of the charge to land with. */
  readonly reservePct: number;
  /** The propeller of the aircraft file, for which the plan was made; absent in books of older releases. */
  readonly plannedFor?: PlannedPropeller | null;
}

export interface PlannedPropeller {
  readonly diameterIn: number;
  readonly pitchIn: number;
  readonly blades: number;
}

export const NO_BUDGET: Budget = {
  planned: {
    staticCurrentA: null,
    staticPowerW: null,
    staticRpm: null,
    meanCurrentA: null,
    flightTimeS: null,
    chargeUsedMah: null,
    minCellV: null,
    controllerPeakC: null,
  },
  reservePct: DEFAULTS.reservePct.value,
  plannedFor: null,
};
