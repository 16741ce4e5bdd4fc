export { bisector } from "./bisect.ts";
export { type BudgetBar, budgetScales } from "./budgetScale.ts";
export { endHeights, seriesMark } from "./endLabels.ts";
export type { FlightAxis, FlightBreak, FlightChart, FlightPoint, FlightSeries } from "./flightChart.ts";
export { flightLimitsOffScale } from "./flightChartScale.ts";
export { type FlightDrawing, flightDrawing } from "./flightChartSvg.ts";
export { type Gap, gapsOf } from "./gaps.ts";
export { type IntervalMark, intervalScales } from "./intervalScale.ts";
export { type DrawnWindow, linePath, type Trace } from "./linePath.ts";
export { embedJson, escapeHtml } from "./markup/escape.ts";
export { type Content, html, joined, Markup, NOTHING, trusted } from "./markup/markup.ts";
export { shortened, visibleText } from "./markup/visibleText.ts";
export {
  lastValueRow,
  type Panel,
  type PanelGap,
  type PanelLimit,
  type PanelMark,
  type PanelPhase,
  type PanelSeries,
  traceExtremes,
} from "./panel.ts";
export { limitsOffScale, panelScale } from "./panelScale.ts";
export { MOST_TIME_TICKS, type PanelDrawing, panelDrawing } from "./panelSvg.ts";
export { phaseStrip } from "./phaseStrip.ts";
export {
  numberAxis,
  type Plane,
  type PlaneAxis,
  type PlaneBand,
  type PlaneLine,
  type PlaneMark,
  type PlaneWall,
  wholeTrace,
} from "./plane.ts";
export { type PlaneDrawing, planeDrawing } from "./planeSvg.ts";
export { anchorAt, percentOf, percentText } from "./position.ts";
export { type StepRow, stepScales } from "./stepScale.ts";
export { type SumStep, sumDrawing } from "./sumScale.ts";
export { MOST_TABLE_ROWS, type TableRows, tableRows } from "./tableRows.ts";
export { thinnedRows } from "./thinning.ts";
export { timeTicks } from "./timeTicks.ts";
export { type ValueScale, valueScale } from "./valueScale.ts";
export { type VerdictWord, verdictShape } from "./verdictShape.ts";
