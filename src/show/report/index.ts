export { flightReport } from "./flightReport.ts";
export type { FlightReportInput } from "./reportInput.ts";
export type { SeasonReportInput } from "./season/seasonInput.ts";
export { type SeasonOfAircraft, seasonPage } from "./season/seasonPage.ts";
export { seasonReport } from "./season/seasonReport.ts";
