export type { AnalysedFlight, FlightWindow, Phase, PhaseName } from "./analysedFlight.ts";
export { analyseRecording } from "./analyseRecording.ts";
export { cellCountQuestion, restedPackV } from "./cellCount.ts";
export { heatSolver, heatSums } from "./controllerHeatProfile.ts";
export { currentDoubt } from "./currentDoubt.ts";
export { type LeftOutRun, leftOutRuns } from "./currentDoubtSentences.ts";
export type { DayFacts } from "./dayFacts.ts";
export type { FlightLoad } from "./flightLoad.ts";
export { isAtRestThroughout } from "./flightTime.ts";
export { type HeatTrace, numbersOf, numbersText } from "./heatTrace.ts";
export type { FullThrottleHeat, HeatView, TimeCurve } from "./heatView.ts";
export type { LoadLines, SpeedLine } from "./loadLines.ts";
export type { LoadView } from "./loadView.ts";
export {
  type HeatDriver,
  isCurrentEstimated,
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "./measures.ts";
export { MEASURE_WORDS } from "./measureWords.ts";
export type { PackPart, WeakestPart } from "./packPart.ts";
export type { PackPicture } from "./packResistancePicture.ts";
export type { PackView, UnderLoad } from "./packView.ts";
export type { FlightPictures } from "./pictures.ts";
export { cellRangeOfRows, filledChannel, meanCellOfRows, powerOfRows } from "./rowSeries.ts";
export { ALTITUDE_CHANGES_THERE, chargeLeftRestsOn } from "./sentences.ts";
export { type Decays, sharedDecays } from "./sharedDecays.ts";
export { weakestNotices } from "./weakestPart.ts";
