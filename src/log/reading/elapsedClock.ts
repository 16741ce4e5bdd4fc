import { SECONDS_PER_DAY } from "../../base/quantity/index.ts";
import type { ColumnRange } from "./columnRange.ts";
import {
  type DoubtfulClock,
  type FoundClock,
  medianStep,
  secondsSinceFirst,
  shownStep,
} from "./foundClock.ts";
import { type Unit, unitOf } from "./units.ts";

/** Rows further apart than this, or faster than 2000 a second, no flight log has: the unit is wrong. */
export const LONGEST_STEP_S = 10;
export const SHORTEST_STEP_S = 0.000_45;
/** Nor is a whole log of fast rows over in less than this. */
export const FAST_STEP_S = 0.002;
export const SHORTEST_FAST_LOG_S = 5;
/** Unix seconds from 2001 to 2103; milliseconds, microseconds and nanoseconds are 1e3, 1e6, 1e9 times that. */
const FIRST_EPOCH_S = 1e9;
const LAST_EPOCH_S = 4.2e9;
const EPOCH_UNITS = ["s", "ms", "us", "ns"] as const;
/** Counters of milliseconds and microseconds start again at 2^32. */
const COUNTER_END = 2 ** 32;
/** Small loggers count in 16 bits; believed only when the clock is seen to fall there. */
const SHORT_COUNTER_END = 2 ** 16;
/** Ten seconds as a share of a day. */
const DAY_MARGIN = 10 / SECONDS_PER_DAY;

const MOST_LEVEL_SHARE = 0.1;

const TIME_UNITS: readonly Unit[] = ["s", "ms", "us", "ns"].map((name) => unitOf("time", name)!);

export interface NumericClockQuestion {
  readonly column: number;
  readonly values: Float64Array;
  readonly range: ColumnRange;
  readonly headerUnit: Unit | null;
  readonly givenUnit: Unit | null;
  /** The header says that the clock counts from midnight. */
  readonly isOfDay: boolean;
}

/** Reads a column of numbers as a clock; the unit comes from the user, the header, or the size of the steps. */
export function numericClock(question: NumericClockQuestion): FoundClock | DoubtfulClock | null {
  const { values, range, column } = question;
  const step = range.count === 1 ? 1 : medianStep(values);
  if (Number.isNaN(step)) return null;
  const stated = question.givenUnit ?? question.headerUnit;
  const epoch = epochUnit(range.median, step, stated);
  const unit = epoch ?? stated ?? dayNumberUnit(range.median, step) ?? unitOfSteps(step);
  const stepS = step * (unit?.factor ?? 1);
  const durationS = stepS * Math.max(0, range.count - 1);
  const isOdd = isOddPace(stepS, durationS);
  if (unit === null || (isOdd && question.givenUnit === null)) {
    return { column, doubt: "unit", stepS, durationS, unit: unit?.name ?? "s" };
  }
  const wrapS = epoch !== null ? null : wrapOf(question, unit);
  const kind = epoch !== null ? "epoch" : wrapS === SECONDS_PER_DAY ? "timeOfDay" : "elapsed";
  return {
    timeS: secondsSinceFirst(values, unit.factor),
    clock: {
      kind,
      wrapS,
      resolutionS: shownStep(values) * unit.factor,
      textOfRow: kind === "epoch" ? (row) => epochText(values[row]!, unit.factor) : () => null,
    },
    column,
    dateColumn: null,
    unit: unit.name,
    why: whyOf(question, unit, epoch !== null, stepS),
    ambiguousDate: null,
    unnamedStepS: isUnnamed(question, unit, kind) ? stepS : null,
  };
}

/** A bare count of 1 or more a row may as well be tenths of a second, milliseconds, or rows. */
function isUnnamed({ givenUnit, headerUnit, range, values }: NumericClockQuestion, unit: Unit, kind: string) {
  const isBare = givenUnit === null && headerUnit === null && kind === "elapsed" && unit.name === "s";
  return isBare && range.isWhole && levelShare(values) < MOST_LEVEL_SHARE;
}

/** Share of the rows with the stamp of the row before: whole seconds with several rows each have many. */
function levelShare(values: Float64Array): number {
  let level = 0;
  for (let row = 1; row < values.length; row++) if (values[row] === values[row - 1]) level++;
  return values.length > 1 ? level / (values.length - 1) : 0;
}

function isOddPace(stepS: number, durationS: number): boolean {
  const isOverAtOnce = stepS < FAST_STEP_S && durationS < SHORTEST_FAST_LOG_S;
  return stepS > LONGEST_STEP_S || stepS < SHORTEST_STEP_S || durationS > SECONDS_PER_DAY || isOverAtOnce;
}

function epochUnit(median: number, step: number, stated: Unit | null): Unit | null {
  for (const name of EPOCH_UNITS) {
    const unit = unitOf("time", name)!;
    const isInRange = median * unit.factor > FIRST_EPOCH_S && median * unit.factor < LAST_EPOCH_S;
    if (isInRange && step * unit.factor <= LONGEST_STEP_S && (stated === null || stated.name === name))
      return unit;
  }
  return null;
}

/** Day numbers of spreadsheets, counted from 1900: 30000 is in 1982, 80000 in 2119. */
function dayNumberUnit(median: number, step: number): Unit | null {
  const days = unitOf("time", "d")!;
  const isOfRows = step * days.factor > SHORTEST_STEP_S && step * days.factor <= LONGEST_STEP_S;
  return median > 30_000 && median < 80_000 && isOfRows && step < 1e-3 ? days : null;
}

/** The largest unit in which rows are not more than ten seconds apart. */
function unitOfSteps(step: number): Unit | null {
  return TIME_UNITS.find((unit) => step * unit.factor <= LONGEST_STEP_S) ?? null;
}

function wrapOf(question: NumericClockQuestion, unit: Unit): number | null {
  const { range } = question;
  const day = SECONDS_PER_DAY / unit.factor;
  if (range.high < day && (question.isOfDay || dropsAt(day, question.values, day * DAY_MARGIN)))
    return SECONDS_PER_DAY;
  const isCounter = range.isWhole && range.low >= 0 && (unit.name === "ms" || unit.name === "us");
  if (!isCounter || range.high >= COUNTER_END) return null;
  const isShort =
    range.high < SHORT_COUNTER_END && dropsAt(SHORT_COUNTER_END, question.values, SHORT_COUNTER_END / 20);
  return (isShort ? SHORT_COUNTER_END : COUNTER_END) * unit.factor;
}

/** True when the clock falls from just below `end` to just above zero. */
function dropsAt(end: number, values: Float64Array, margin: number): boolean {
  let previous = Number.NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (previous > end - margin && value < margin) return true;
    previous = value;
  }
  return false;
}

function epochText(value: number, factor: number): string | null {
  const date = new Date(Math.round(value * factor * 1000));
  return Number.isNaN(date.getTime()) ? null : date.toISOString();
}

function whyOf(question: NumericClockQuestion, unit: Unit, isEpoch: boolean, stepS: number): string {
  const counts = isEpoch ? "counts from 1970" : "rises row by row";
  const steps = `a step of ${Number(stepS.toPrecision(3))} s`;
  if (question.givenUnit !== null) return `${counts}; the unit was given`;
  if (question.headerUnit !== null) return `${counts}; the header names the unit, ${steps}`;
  return `${counts}; no unit in the header, ${unit.name} gives ${steps}`;
}
