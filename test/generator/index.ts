export type { TrueAircraft, TrueDay, TrueHeatDriver } from "./aircraft.ts";
export { goldenFiles } from "./goldenFiles.ts";
export type { LogStyle, StartClock } from "./logStyle.ts";
export { HERON, NAMED_AIRCRAFT, STORK, SWIFT, TERN, WREN } from "./namedAircraft.ts";
export { type Random, seededRandom } from "./random.ts";
export { randomAircraft } from "./randomAircraft.ts";
export {
  ALL_DEPARTURES,
  type Departures,
  NO_DEPARTURES,
  type RandomFlightOptions,
  randomFlightSpec,
} from "./randomFlight.ts";
export { type ScriptOptions, USUAL_SCRIPT } from "./script.ts";
export { type SeasonFlight, simulateSeason } from "./season.ts";
export { seasonFiles } from "./seasonFiles.ts";
export { SEASON_AMP_GAIN, SEASON_LOGS, type SeasonLog } from "./seasonPlan.ts";
export {
  type DropOut,
  type LoggedChannel,
  type LoggedFlight,
  type SensorSpec,
  USUAL_CHANNELS,
  USUAL_SENSORS,
} from "./sensors.ts";
export {
  type FlightSpec,
  flown,
  logFlight,
  type SimulatedFlight,
  simulateFlight,
  usualSpec,
} from "./simulate.ts";
export { type AircraftFile, STATED_EXACTLY, type StatedSpec } from "./statedFacts.ts";
export { LOG_STYLES, type LogStyleKey } from "./styles.ts";
export type { FlightTruth, PartsTruth, SortieTruth } from "./truth.ts";
export { writeLog } from "./writeLog.ts";
