export {
  type DeadChannel,
  type Hole,
  holeLimitS,
  type Recording,
  type Repair,
  type SensorCorrections,
} from "./recording.ts";
