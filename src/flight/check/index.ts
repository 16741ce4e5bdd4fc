export { type CheckRequest, checkLog } from "./checkLog.ts";
export type {
  CheckedChannel,
  CheckedFlight,
  CheckedLog,
  CheckedLogWithRows,
  FlightCheck,
} from "./flightCheck.ts";
