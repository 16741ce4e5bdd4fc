export { flightReport } from "./flightReport.ts";
export type { FlightReportInput } from "./reportInput.ts";
