import { isKnown, plainNumber, unitText } from "../../../base/quantity/index.ts";
import type { MeasureName, PhaseName } from "../../../flight/analysis/index.ts";
import type { Panel, PanelGap, PanelLimit, PanelMark, PanelPhase, PanelSeries } from "../../charts/index.ts";
import { limitSourceWords } from "../measureMethods.ts";
import type { FlightContext } from "../reportInput.ts";
import { extremeWords, limitWords, noDataWords, PHASE_WORDS } from "../sentences.ts";

/** Seconds since the log began that all panels of a flight span. */
export function timeSpan({ recording, analysed }: FlightContext): {
  readonly fromX: number;
  readonly toX: number;
} {
  const fromX = recording.timeS[analysed.firstRow] ?? 0;
  const toX = recording.timeS[analysed.lastRow] ?? fromX;
  return { fromX, toX: toX > fromX ? toX : fromX + 1 };
}

const TINTS: Readonly<Record<PhaseName, PanelPhase["tint"]>> = {
  rest: 0,
  runUp: 1,
  taxi: 0,
  takeOff: 2,
  flight: 1,
  landing: 2,
  after: 0,
};

export function phasesOf(context: FlightContext): readonly PanelPhase[] {
  const { fromX, toX } = timeSpan(context);
  return context.flight.phases.flatMap(({ phase, startS, endS }) => {
    const clipped = { fromX: Math.max(fromX, startS), toX: Math.min(toX, endS) };
    return clipped.toX > clipped.fromX ? [{ words: PHASE_WORDS[phase], tint: TINTS[phase], ...clipped }] : [];
  });
}

/** Limits that the judgements hold these measures against, each number once. */
export function limitsOf(context: FlightContext, measures: readonly MeasureName[]): readonly PanelLimit[] {
  const found = new Map<number, PanelLimit>();
  for (const { line, against, value, source, sense, measured } of context.flight.judgements) {
    if (against !== "limit" || value === null || !measures.includes(line) || found.has(value)) continue;
    const words = limitWords(`${plainNumber(value)} ${unitText(measured.unit)}`);
    found.set(value, {
      value,
      words,
      source: limitSourceWords(source),
      forbidden: sense === "atLeast" ? "below" : "above",
    });
  }
  return [...found.values()];
}

/** The mark of an extreme, at the sample its measure names; none when the measure is not known. */
export function markOf(
  context: FlightContext,
  measure: MeasureName,
  side: PanelMark["side"],
): readonly PanelMark[] {
  const quantity = context.flight.measures[measure];
  if (!isKnown(quantity) || quantity.sample === undefined) return [];
  const { fromX, toX } = timeSpan(context);
  const { atS } = quantity.sample;
  if (atS < fromX || atS > toX) return [];
  const words = extremeWords(`${plainNumber(quantity.value)} ${unitText(quantity.unit)}`, atS);
  return [{ x: atS, value: quantity.value, side, words, lean: "middle" }];
}

/** Marks of several lines in one panel: the highest labelled above it, the others below, leaning apart. */
export function apart(marks: readonly PanelMark[]): readonly PanelMark[] {
  if (marks.length < 2) return marks;
  const falling = [...marks].sort((a, b) => b.value - a.value);
  return falling.map((mark, index) => ({
    ...mark,
    side: index === 0 ? "above" : "below",
    lean: index % 2 === 0 ? "left" : "right",
  }));
}

/** Stretches in which no series of the panel holds a value: holes of the log and dropouts of its sensor. */
export function panelGaps(context: FlightContext, series: readonly PanelSeries[]): readonly PanelGap[] {
  const [first, ...others] = series;
  if (first === undefined) return [];
  const shared = first.trace.gaps.filter((gap) =>
    others.every(({ trace }) => trace.gaps.some((other) => other.from <= gap.from && other.to >= gap.to)),
  );
  return shared.map(({ from, to }) => {
    const isJump = context.recording.holes.some(
      (hole) => hole.isUnknownLength && hole.startS >= from && hole.endS <= to,
    );
    return { fromX: from, toX: to, words: noDataWords(to - from, isJump) };
  });
}

/** A panel from its own parts and what all panels of the flight share. */
export function panelOf(
  context: FlightContext,
  own: Pick<Panel, "id" | "title" | "unit" | "decimals" | "startsAtZero" | "series" | "limits" | "marks">,
): Panel {
  return {
    ...own,
    ...timeSpan(context),
    phases: phasesOf(context),
    gaps: panelGaps(context, own.series),
  };
}
