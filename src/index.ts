// The public list: everything here is pure (bytes and text in, values and text out) and safe to call in a worker.

export { type Budget, NO_BUDGET, type Planned } from "./aircraft/budget.ts";
export {
  type ControllerFacts,
  type Facts,
  type FieldFacts,
  type MotorFacts,
  NO_FACTS,
  type PackFacts,
  type PropellerFacts,
  type SensorFacts,
} from "./aircraft/facts.ts";
export {
  type AircraftNotRead,
  DEFAULTS,
  parseAircraftFile,
  type ReadAircraft,
  type RememberedReading,
  starterAircraftFile,
} from "./aircraft/index.ts";
export { CHANNEL_NAMES, type ChannelFacts, type ChannelName, channelFacts } from "./base/channels/index.ts";
export type { Notice, Severity } from "./base/notices/index.ts";
export {
  type Basis,
  type BoundKind,
  isKnown,
  type KnownQuantity,
  type Quantity,
  quantityText,
  type SampleReference,
  type UnknownQuantity,
} from "./base/quantity/index.ts";
export {
  type AnalysedFlight,
  analyseRecording,
  type DayFacts,
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
  type Phase,
  type PhaseName,
} from "./flight/analysis/index.ts";
export {
  type CheckedFlight,
  type CheckedLog,
  type CheckedLogWithRows,
  type CheckRequest,
  checkLog,
  type FlightCheck,
} from "./flight/check/index.ts";
export { type Judgement, judgeFlight, type Verdict } from "./flight/judgement/index.ts";
export {
  type ColumnChoice,
  type Dialect,
  type LogBytes,
  NO_READING_OPTIONS,
  type ReadingOptions,
  type ReadLog,
  type ReadOutcome,
  readLog,
} from "./log/reading/index.ts";
export {
  type Recording,
  recordLog,
  type SensorCorrections,
} from "./log/recording/index.ts";
export { type FlightReportInput, flightReport } from "./show/report/index.ts";
