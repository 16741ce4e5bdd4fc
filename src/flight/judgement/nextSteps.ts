import type { Judgement } from "./judgement.ts";

/** What to do first when a limit was passed, by measure; makers' limits and local rules come first. */
const AFTER_LIMIT: Readonly<Record<string, string>> = {
  peakCurrentA: "fit less propeller or a larger controller before the next flight",
  longestOverRatingS: "fly with less throttle or fit a larger controller",
  peakPowerW: "fit less propeller before the next flight",
  peakRpm: "stop using this propeller at this speed: a blade can be thrown",
  controllerPeakC: "let the controller cool and improve its airflow before the next flight",
  controllerHotDayPeakC: "improve the controller's airflow before summer",
  motorPeakC: "let the motor cool and fit less propeller",
  packPeakC: "let the pack cool away from anything that burns before you touch the charger",
  minCellV: "land earlier or fit a stronger pack, and check the cells before charging",
};

interface BothSides {
  readonly above: string;
  readonly below: string;
}

const LESS_PROPELLER = "fit less propeller or change the plan";
const UNDER_PLAN = "check propeller and pack, or change the plan";

/** A few words on what brings a flight back to its plan, by measure and by the side it left. */
const AFTER_PLAN: Readonly<Record<string, BothSides>> = {
  staticCurrentA: { above: LESS_PROPELLER, below: UNDER_PLAN },
  staticPowerW: { above: LESS_PROPELLER, below: UNDER_PLAN },
  staticRpm: { above: "check propeller and speed sensor, or change the plan", below: LESS_PROPELLER },
  meanCurrentA: { above: "use less throttle or less propeller", below: "change the plan" },
  flightTimeS: {
    above: "land earlier or change the plan",
    below: "change the plan; fly longer only above the reserve",
  },
  chargeUsedMah: { above: "land earlier or change the plan", below: "change the plan" },
  minCellV: { above: "change the plan", below: "land earlier or fit a stronger pack" },
  controllerPeakC: { above: "give the controller better airflow", below: "change the plan" },
  chargeLeftPct: { above: "change the plan", below: "land earlier, with a shorter timer" },
};

export function stepAfterLimit({ line }: Judgement): string | null {
  return AFTER_LIMIT[line] ?? null;
}

/** Null where a measure has no plan of its own or no value. */
export function stepAfterPlan({ line, measured, value }: Judgement): string | null {
  if (measured.value === null || value === null) return null;
  const sides = AFTER_PLAN[line];
  return sides === undefined ? null : measured.value > value ? sides.above : sides.below;
}
