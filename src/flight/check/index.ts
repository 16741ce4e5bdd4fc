export { type CheckRequest, checkLog, withStatedCells } from "./checkLog.ts";
export type {
  CheckedChannel,
  CheckedFlight,
  CheckedLog,
  CheckedLogWithRows,
  FlightCheck,
} from "./flightCheck.ts";
