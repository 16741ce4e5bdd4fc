import type { ColumnView } from "./columnView.ts";
import { headerUnit } from "./columnView.ts";
import type { ClockFacts, DateOrder } from "./contract.ts";
import { numericClock } from "./elapsedClock.ts";
import type { DoubtfulClock, FoundClock } from "./foundClock.ts";
import { mayBeHours, meanStepS } from "./minutesOrHours.ts";
import type { RowLines } from "./rowLines.ts";
import { isDateOnly, isTextClock, textClock } from "./textClock.ts";
import type { Unit } from "./units.ts";
import { QUANTITY_WORDS } from "./wordLists.ts";

export interface TimeAnswers {
  /** 0-based column, or null. */
  readonly column: number | null;
  readonly unit: Unit | null;
  readonly dateOrder: DateOrder | null;
}

export type TimeChoice =
  | { readonly clock: FoundClock }
  | { readonly doubt: DoubtfulClock }
  | { readonly constant: ColumnView }
  | { readonly backward: ColumnView }
  | { readonly none: true };

/** Share of rising or level steps that a clock running backward still has. */
const MOST_RISING_BACKWARD = 0.2;
/** A clock of minutes and whole seconds with rows closer than this is one of hours and minutes. */
const SHORTEST_MINUTE_STEP_S = 0.02;
/** A log shorter than this by minutes and seconds may be one by hours and minutes. */
const SHORTEST_LOG_S = 60;
const OF_DAY_WORDS = ["day", "tod", "midnight", "tag", "tages", "daytime", "jour"];

/** The clock of the log: of all columns that can be one, that which moves forward in most rows. */
export function chooseTime(views: readonly ColumnView[], answers: TimeAnswers): TimeChoice {
  const possible =
    answers.column === null ? clockColumns(views) : views.filter((view) => view.at === answers.column);
  const dates = dateColumn(views);
  const found = possible.map((view) => ({ view, result: readAs(view, dates, answers) }));
  const clocks = found.flatMap(({ result }) => (result !== null && "timeS" in result ? [result] : []));
  const best = pickBest(clocks);
  if (best !== null) return { clock: withWrittenText(best, clocks) };
  const doubt = found.find(({ result }) => result !== null && "doubt" in result)?.result;
  if (doubt !== undefined && doubt !== null && "doubt" in doubt) return { doubt };
  const constant = possible.find((view) => view.column.numberCount + view.column.clockCount > 0);
  if (constant === undefined) return { none: true };
  return runsBackward(constant) ? { backward: constant } : { constant };
}

/** A count down, or rows in the wrong order. */
function runsBackward({ range }: ColumnView): boolean {
  return range.count > 2 && !range.isConstant && range.risingShare < MOST_RISING_BACKWARD;
}

function readAs(
  view: ColumnView,
  dates: ColumnView | null,
  answers: TimeAnswers,
): FoundClock | DoubtfulClock | null {
  if (isTextClock(view.column)) {
    const beside =
      dates === null || view.column.dateCount > 0 ? null : { column: dates.column, at: dates.at };
    const clock = textClock(view.column, view.at, beside, answers.dateOrder);
    if (movesShare(clock.timeS) === 0) return null;
    return withoutSeconds(view, clock) ?? clock;
  }
  return numericClock({
    column: view.at,
    values: view.values,
    range: view.range,
    headerUnit: headerUnit(view, "time"),
    givenUnit: answers.unit,
    isOfDay: view.name.words.some((word) => OF_DAY_WORDS.includes(word)),
  });
}

/**
 * "2026-05-01 10:05", or "10:05" on more rows than a logger writes in a second: hours and minutes, as a spreadsheet
 * leaves them. Or on one row each, where so few seconds make no log.
 */
function withoutSeconds({ column, at }: ColumnView, { timeS, unit }: FoundClock): DoubtfulClock | null {
  if (column.twoPartCount < column.clockCount) return null;
  const hasFraction = /[.,]\d+$/.test(column.firstClock!.text);
  const stepS = meanStepS(timeS, column.clockCount);
  const durationS = stepS * Math.max(1, column.clockCount - 1);
  const isDated = column.dateCount > 0 && !hasFraction;
  const isTooShort = durationS < SHORTEST_LOG_S && mayBeHours(column, stepS);
  return isDated || isTooShort || stepS < SHORTEST_MINUTE_STEP_S
    ? { column: at, doubt: "unit", stepS, durationS, unit }
    : null;
}

function clockColumns(views: readonly ColumnView[]): readonly ColumnView[] {
  const named = views.filter((view) => isTextClock(view.column) || isNamedClock(view));
  return named.length > 0 ? named : views.slice(0, 1).filter(isUnnamedClock);
}

function isNamedClock(view: ColumnView): boolean {
  if (view.range.count === 0 || view.column.filledCount > 2 * view.column.numberCount) return false;
  const isNamed =
    view.quantity === "time" ||
    view.quantity === "date" ||
    view.name.words.some((word) => word.length > 1 && QUANTITY_WORDS.time.includes(word));
  const isOther = view.quantity !== null && view.quantity !== "time" && view.quantity !== "date";
  return isNamed && !isOther && view.excluded === null;
}

/** A first column without a known name that rises in every row by other than one is a clock. */
function isUnnamedClock(view: ColumnView): boolean {
  const { range } = view;
  if (view.quantity !== null || view.excluded !== null || range.count < 3 || range.risingShare < 1)
    return false;
  const isRowNumber = range.isWhole && Math.abs((range.high - range.low) / (range.count - 1) - 1) < 0.01;
  return !range.isConstant && !isRowNumber;
}

function dateColumn(views: readonly ColumnView[]): ColumnView | null {
  return views.find((view) => isDateOnly(view.column)) ?? null;
}

/** Share of the rows in which the clock moved forward. */
function movesShare(timeS: Float64Array): number {
  let moves = 0;
  let previous = Number.NaN;
  for (let row = 0; row < timeS.length; row++) {
    const value = timeS[row]!;
    if (value > previous) moves++;
    if (!Number.isNaN(value)) previous = value;
  }
  return timeS.length > 1 ? moves / (timeS.length - 1) : 0;
}

function pickBest(clocks: readonly FoundClock[]): FoundClock | null {
  let best: { clock: FoundClock; share: number } | null = null;
  for (const clock of clocks) {
    const share = movesShare(clock.timeS);
    if (best === null || share > best.share + 0.02) best = { clock, share };
  }
  return best?.clock ?? null;
}

/** A clock that shows only elapsed time borrows the written time of another clock column. */
function withWrittenText(best: FoundClock, clocks: readonly FoundClock[]): FoundClock {
  if (best.clock.kind !== "elapsed") return best;
  const dated = clocks.find((each) => each.clock.kind !== "elapsed");
  return dated === undefined ? best : { ...best, clock: { ...best.clock, textOfRow: dated.clock.textOfRow } };
}

/** Rows spaced by a given rate; a line left out keeps its place in time. */
export function clockOfRate(
  lines: RowLines,
  rateHz: number,
): { readonly timeS: Float64Array; readonly clock: ClockFacts } {
  const timeS = new Float64Array(lines.rows);
  const first = lines.ordinalOfRow(0);
  for (let row = 0; row < lines.rows; row++) timeS[row] = (lines.ordinalOfRow(row) - first) / rateHz;
  return { timeS, clock: { kind: "none", wrapS: null, resolutionS: 1 / rateHz, textOfRow: () => null } };
}
