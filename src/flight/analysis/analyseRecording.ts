import type { Facts } from "../../aircraft/facts.ts";
import type { Notice } from "../../base/notices/index.ts";
import { isKnown } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import type { AnalysedFlight } from "./analysedFlight.ts";
import { cellsInSeries } from "./cellCount.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { chargeCounterNotices } from "./chargeCounterCheck.ts";
import type { DayFacts } from "./dayFacts.ts";
import type { FlightContext } from "./flightContext.ts";
import { flightLoadOf } from "./flightLoadOf.ts";
import { flightShape } from "./flightShape.ts";
import { flightWindows, type WindowRows } from "./flightWindows.ts";
import { heatTraceOf } from "./heatTrace.ts";
import { identifiedMeasures } from "./identifiedMeasures.ts";
import type { Measures } from "./measures.ts";
import { measuresOf } from "./measuresOf.ts";
import { type MotorRunning, motorRunning } from "./motorRunning.ts";
import { phasesOf } from "./phases.ts";
import { flightPictures } from "./pictures.ts";
import { restChargeNotices } from "./restChargeCheck.ts";
import { restAfter, restBefore } from "./restVoltage.ts";
import { endsUnderPower, impossibleChargeLeft, NOTHING_RUNS, startsUnderPower } from "./sentences.ts";
import { staticRun } from "./staticRun.ts";
import { powerAtEdges } from "./underPower.ts";
import { weakestNotices, weakestPart } from "./weakestPart.ts";

/**
 * Recording x facts -> flights, in order of time. Every row belongs to exactly one of them; a log in which
 * nothing runs is one bench run. Linear in rows.
 */
export function analyseRecording(
  recording: Recording,
  facts: Facts,
  day: DayFacts,
): readonly AnalysedFlight[] {
  const running = motorRunning(recording);
  return flightWindows(recording, running).map((window) => {
    const context = contextOf(recording, facts, day, running, window);
    return analysedFlight(context, window);
  });
}

function contextOf(
  recording: Recording,
  facts: Facts,
  day: DayFacts,
  running: MotorRunning | null,
  { rows, group }: WindowRows,
): FlightContext {
  const shape = group && running ? flightShape(recording, group, running) : null;
  const edges = group && running ? powerAtEdges(recording, group, running) : NO_POWER;
  const first = group?.runs[0];
  const last = group?.runs.at(-1);
  return {
    recording,
    facts,
    day,
    rows,
    group,
    running,
    shape,
    ...edges,
    restBefore: first ? restBefore(recording, rows, first.firstRow) : NO_REST,
    restAfter: last ? restAfter(recording, rows, last.lastRow) : NO_REST,
    staticRun: staticRun(recording, group, running, shape),
    cells: cellsInSeries(recording, facts),
  };
}

const NO_POWER = { startsUnderPower: false, endsUnderPower: false };
const NO_REST = { packV: null, why: NOTHING_RUNS } as const;

function analysedFlight(context: FlightContext, window: WindowRows): AnalysedFlight {
  const { recording, group, shape } = context;
  const { windowStartS, windowEndS } = window;
  const identified = identifiedMeasures(context);
  const measures = measuresOf(context, identified);
  const load = flightLoadOf(context, identified);
  const doubts = chargeLeftNotices(context, measures);
  const weakest = weakestPart(context, measures.packResistanceMohm);
  return {
    kind: shape === null ? "benchRun" : "flight",
    firstRow: context.rows.firstRow,
    lastRow: context.rows.lastRow,
    windowStartS,
    windowEndS,
    startS: group?.startS ?? windowStartS,
    endS: group?.endS ?? windowStartS,
    complete: !context.startsUnderPower && !context.endsUnderPower,
    startedAt: group ? recording.clockTextOfRow(group.runs[0]!.firstRow) : null,
    takeOffS: shape?.isTakeOffLogged ? shape.takeOff.value : null,
    touchdownS: shape?.isTouchdownLogged ? shape.touchdown.value : null,
    phases: phasesOf(windowStartS, windowEndS, group, shape),
    measures,
    load: load !== null && doubts.length > 0 ? { ...load, isChargeDoubtful: true } : load,
    ...(doubts.length > 0 && { isChargeDoubtful: true }),
    heatTrace: shape === null ? null : heatTraceOf(context, identified),
    weakestPart: weakest,
    pictures: flightPictures(context, identified, measures),
    notices: [
      ...(group?.notices ?? []),
      ...powerNotices(context),
      ...identified.notices,
      ...chargeCounterNotices(context),
      ...doubts,
      ...weakestNotices(weakest),
    ],
  };
}

/** False where neither current nor shaft speed holds a value: the missing channel has its own notice. */
function isRunTold(recording: Recording, row: number): boolean {
  return (["current", "shaftSpeed"] as const).some(
    (channel) => !Number.isNaN(workingChannel(recording, channel)?.[row] ?? Number.NaN),
  );
}

function chargeLeftNotices(context: FlightContext, measures: Measures): readonly Notice[] {
  const left = measures.chargeLeftPct;
  const isImpossible = isKnown(left) && (left.value < 0 || left.value > 100);
  return isImpossible ? [impossibleChargeLeft(left.value, left.why)] : restChargeNotices(context, measures);
}

function powerNotices(context: FlightContext): readonly Notice[] {
  const { recording, group } = context;
  if (group === null) return [];
  const notices: Notice[] = [];
  const line = (row: number) => recording.lineOfRow(row);
  if (context.startsUnderPower) {
    notices.push(startsUnderPower(line(group.runs[0]!.firstRow), group.segment.startsAfterHole));
  }
  if (context.endsUnderPower && isRunTold(recording, group.runs.at(-1)!.lastRow)) {
    notices.push(endsUnderPower(line(group.runs.at(-1)!.lastRow), group.segment.endsAtHole));
  }
  return notices;
}
