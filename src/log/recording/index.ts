export { currentCeiling } from "./currentCeiling.ts";
export { type MissingStretch, missingStretches } from "./missingStretches.ts";
export {
  type DeadChannel,
  type Hole,
  holeLimitS,
  type Recording,
  type Repair,
  type SensorCorrections,
} from "./recording.ts";
export { recordLog } from "./recordLog.ts";
export { smallestStep } from "./resolution.ts";
export { negativeOffsetA, restCurrentA } from "./restCurrent.ts";
export { type StuckStretch, stuckStretches } from "./stuckSensors.ts";
