import {
  isKnown,
  minutesAndSeconds,
  plainNumber,
  type Quantity,
  toPlace,
} from "../../../base/quantity/index.ts";
import type { FullThrottleHeat, HeatView, TimeCurve } from "../../../flight/analysis/index.ts";
import {
  bisector,
  html,
  type Markup,
  type Plane,
  type PlaneLine,
  seriesMark,
  tableRows,
  timeTicks,
  type ValueScale,
  valueScale,
  wholeTrace,
} from "../../charts/index.ts";
import { limitsOf } from "../panels/panelParts.ts";
import type { FlightContext } from "../reportInput.ts";
import { DRIVER_WORDS, limitsOffScaleSentence, seconds, sentence } from "../sentences.ts";
import { measureNumber, type PartNumber, type PartTable, partSection } from "./partSection.ts";
import { HEAT, limitAt } from "./partWords.ts";
import { planeFigure } from "./planeFigure.ts";

/** The controller's heat: measured, modelled and on the hot day, with time constant, rise and seconds of full throttle. */
export function heatSection(context: FlightContext): Markup {
  const { heat } = context.analysed.pictures;
  const { controllerTimeConstantS: tau } = context.flight.measures;
  const id = `${context.id}-heat`;
  return partSection({
    id,
    title: HEAT.title,
    meaning: context.meanings.heat,
    figure: heat.measured === null ? null : figure(context, `${id}-trace`, heat.measured),
    why: isKnown(tau) ? null : HEAT.notFound(tau.why),
    numbers: heat.measured === null ? [] : numbers(context),
    tables: heat.measured === null ? [] : [table(heat, heat.measured)],
  });
}

const MOST_TICKS = 10;
/** Readings further apart than this share of the time shown leave the line open. */
const OPEN_SHARE = 0.03;

function figure(context: FlightContext, id: string, measured: TimeCurve): Markup {
  const { modelled, hotDay } = context.analysed.pictures.heat;
  const [from, to] = [measured.x[0] ?? 0, measured.x.at(-1) ?? 1];
  const drawn = [
    { id: "heatMeasured", words: HEAT.measured, style: 1, curve: measured },
    { id: "heatModelled", words: HEAT.modelled, style: 2, curve: modelled },
    { id: "heatHotDay", words: HEAT.hotDay, style: 3, curve: hotDay },
  ] as const;
  const lines = drawn.flatMap(({ curve, ...line }): PlaneLine[] =>
    curve === null ? [] : [{ ...line, trace: wholeTrace(curve.x, curve.y, OPEN_SHARE * (to - from)) }],
  );
  const limits = limitsOf(context, ["controllerPeakC", "controllerHotDayPeakC"]);
  const highest = lines.reduce((most, { trace }) => Math.max(most, ...Array.from(trace.y)), -300);
  const near = limits.filter(({ value }) => value <= 2.2 * highest);
  const plane: Plane = {
    id: "heat",
    x: {
      from,
      to: to > from ? to : from + 1,
      title: HEAT.xAxis,
      ticks: timeTicks(from, to, MOST_TICKS).map((at) => ({ at, words: minutesAndSeconds(at) })),
    },
    y: scaleOf(
      lines,
      near.map(({ value }) => value),
    ),
    yTitle: HEAT.yAxis,
    bands: [],
    dots: null,
    lines,
    walls: near.map(({ value, words, source }) => ({ axis: "y", value, words, source })),
    marks: [],
  };
  const beyond = limits
    .filter((limit) => !near.includes(limit))
    .map(({ words, source }) => `${words}, ${source}`);
  return planeFigure(id, modelled === null ? HEAT.figureOfMeasured : HEAT.figure, plane, [
    ...drawn.flatMap(({ curve, style, id: name }) =>
      curve === null ? [] : [html`${seriesMark(style)}${HEAT.says[name]}`],
    ),
    ...(beyond.length === 0 ? [] : [limitsOffScaleSentence(beyond)]),
  ]);
}

function scaleOf(lines: readonly PlaneLine[], limits: readonly number[]): ValueScale {
  const values = lines.flatMap(({ trace }) => Array.from(trace.y)).filter((value) => !Number.isNaN(value));
  return valueScale(Math.min(...values, ...limits), Math.max(...values, ...limits), false);
}

function numbers(context: FlightContext): readonly PartNumber[] {
  const { flight, analysed } = context;
  const { measures } = flight;
  const { airC, fittedAirC, probeLagS, today, onHotDay, hotDayC } = analysed.pictures.heat;
  const { driver } = measures.controllerRisePerA2;
  const measured: PartNumber[] = [
    measureNumber(context, "controllerPeakC"),
    measureNumber(context, "controllerHotDayPeakC"),
    measureNumber(context, "controllerHotDayMarginC"),
    {
      words: HEAT.air,
      name: "airOfDayC",
      value: airC,
      remark: airRemark(airC, fittedAirC),
    },
  ];
  if (!isKnown(measures.controllerTimeConstantS)) return measured;
  const lag = probeLagS === null ? null : HEAT.lag(seconds(probeLagS));
  const drivenBy = driver === undefined ? null : DRIVER_WORDS[driver];
  return [
    ...measured,
    measureNumber(context, "controllerTimeConstantS", undefined, lag),
    measureNumber(context, "controllerRisePerA2", HEAT.rise, drivenBy),
    ...heldNumbers(today, "Today", HEAT.today, context),
    ...heldNumbers(onHotDay, "HotDay", HEAT.onDayOf(plainNumber(hotDayC)), context),
  ];
}

/** Where the air of the day is from, and what the model takes for it. */
function airRemark(airC: Quantity, fittedAirC: number | null): string {
  const source = isKnown(airC) ? [sentence(airC.why ?? "")] : [];
  const fitted = fittedAirC === null ? [] : [HEAT.fittedAir(plainNumber(fittedAirC))];
  return [...source, ...fitted].join(" ");
}

/** Seconds to the limit; where it is not reached, why not, and where the controller settles instead. */
function heldNumbers(
  { untilLimitS, settlesC }: FullThrottleHeat,
  when: "Today" | "HotDay",
  day: string,
  { facts, analysed }: FlightContext,
): readonly PartNumber[] {
  const { fullThrottleA } = analysed.pictures.heat;
  const held = fullThrottleA === null ? "" : ` ${HEAT.at(plainNumber(fullThrottleA))}`;
  const until = {
    words: `${HEAT.until}${limitAt(facts.controller.limitC)}${held}, ${day}`,
    name: `fullThrottleUntilLimit${when}S`,
    value: untilLimitS,
  };
  const settles = {
    words: `${HEAT.settles}${held}, ${day}`,
    name: `fullThrottleSettles${when}C`,
    value: settlesC,
  };
  return isKnown(untilLimitS) || !isKnown(settlesC) ? [until] : [until, settles];
}

const nearest = bisector((value: number) => value).center;

function table({ modelled, hotDay }: HeatView, measured: TimeCurve): PartTable {
  const range = { first: 0, last: measured.x.length - 1 };
  const highest = measured.y.reduce(
    (found, value, row) => (value > (measured.y[found] ?? 0) ? row : found),
    0,
  );
  const { rows, stepS } = tableRows(measured.x, range, [highest]);
  const columns = [
    { head: HEAT.measured, at: (row: number) => measured.y[row] },
    { head: HEAT.modelled, at: (row: number) => modelled?.y[nearest(modelled.x, measured.x[row] ?? 0)] },
    { head: HEAT.hotDay, at: (row: number) => hotDay?.y[row] },
  ].filter((_column, k) => k === 0 || (k === 1 ? modelled !== null : hotDay !== null));
  return {
    name: modelled === null ? HEAT.figureOfMeasured : HEAT.figure,
    caption: HEAT.caption(seconds(stepS)),
    heads: ["time, min:s", ...columns.map(({ head }) => `${head}, °C`)],
    rows: rows.map((row) => [
      minutesAndSeconds(measured.x[row] ?? 0),
      ...columns.map(({ at }) => toPlace(at(row) ?? Number.NaN, -1)),
    ]),
  };
}
