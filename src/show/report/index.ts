export { flightReport } from "./flightReport.ts";
export { planView } from "./plan/planView.ts";
export { swapView } from "./plan/swapView.ts";
export type { FlightReportInput } from "./reportInput.ts";
export { timerView, trendsView } from "./season/parts.ts";
export type { SeasonReportInput } from "./season/seasonInput.ts";
export { type SeasonOfAircraft, seasonPage } from "./season/seasonPage.ts";
export { seasonReport } from "./season/seasonReport.ts";
