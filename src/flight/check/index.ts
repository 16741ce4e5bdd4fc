export type {
  CheckedChannel,
  CheckedFlight,
  CheckedLog,
  CheckedLogWithRows,
  FlightCheck,
} from "./flightCheck.ts";
