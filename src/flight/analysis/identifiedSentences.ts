import { plainNumber } from "../../base/quantity/index.ts";

export const TOO_FEW_ROWS = "too few rows hold volts and amps";
export const LOAD_HARDLY_CHANGED = "the load hardly changed, so volts and charge cannot be told apart";
export const VOLTS_TOO_LOOSE = "the volts follow the load too loosely in this log";

export function tooShortRun(runningS: number, neededS: number): string {
  return `the motor ran for ${plainNumber(runningS)} s under load; ${plainNumber(neededS)} s are needed`;
}

export function tooFewSteps(steps: number, needed: number): string {
  return `the load changed ${steps} times by more than a tenth of its peak; ${needed} changes are needed`;
}
