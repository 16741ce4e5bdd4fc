import type { Notice } from "../../base/notices/index.ts";
import { COULOMBS_PER_MAH } from "../../base/quantity/index.ts";
import { cellsOfLine, isNumber } from "./cells.ts";
import type { TimeChoice } from "./chooseTime.ts";
import type { ColumnView } from "./columnView.ts";
import { FAST_STEP_S, LONGEST_STEP_S, SHORTEST_FAST_LOG_S, SHORTEST_STEP_S } from "./elapsedClock.ts";
import type { FoundClock } from "./foundClock.ts";
import type { Layout, LayoutProblem } from "./layout.ts";
import { likelyColumns } from "./likelyColumns.ts";
import { rateOption } from "./minutesOrHours.ts";
import { isProse } from "./otherFile.ts";
import * as say from "./sentences.ts";
import { unitOf } from "./units.ts";

/** Why the lines of a file could not be cut into named columns. */
export function layoutProblemNotice(layout: LayoutProblem, head: readonly string[]): Notice {
  const names = layout.header.length;
  switch (layout.problem) {
    case "noRows":
      return isProse(head)
        ? { code: "no-data-rows", severity: "refusal", text: say.noLog("text without rows of numbers") }
        : noRowsNotice(layout.header.join(layout.delimiter), layout.headerLine);
    case "decimalComma":
      return {
        code: "decimal-comma-unclear",
        severity: "question",
        text: say.decimalCommaInCommaFile(names, layout.width),
        options: ["--decimal comma --delimiter ,"],
      };
    case "noPattern":
      return {
        code: "decimal-comma-pattern",
        severity: "refusal",
        text: say.noJoinPattern(names, layout.width),
      };
    case "headerWidth":
      return {
        code: "header-width",
        severity: "question",
        text: say.headerWidth(names, layout.width, layout.headerLine),
        options: [columnsByNumber(rowsOf(head, layout.headerLine, layout.delimiter))],
      };
  }
}

/** Nothing to read under the header. `headerLine` 0: no header either. */
export function noRowsNotice(header: string, headerLine: number): Notice {
  return { code: "no-data-rows", severity: "refusal", text: say.noDataRows(header, headerLine) };
}

/** A log that starts with numbers: the first column that rises is offered as the time. */
export function noHeaderNotice(layout: Layout, head: readonly string[]): Notice {
  const rows = rowsOf(head, layout.bodyLine - 1, layout.delimiter);
  const option = columnsByNumber(rows);
  return {
    code: "no-header",
    severity: "question",
    text: say.noHeader(layout.bodyLine, option),
    options: [option],
  };
}

function rowsOf(head: readonly string[], from: number, delimiter: string): readonly (readonly string[])[] {
  return head.slice(from, from + 40).map((line) => cellsOfLine(line, delimiter));
}

/** "--column time=#1 --column packVoltage=#2 --column current=#3": what the numbers are most like. */
function columnsByNumber(rows: readonly (readonly string[])[]): string {
  const numbers = rows.map((row) =>
    row.map((cell) => (isNumber(cell) ? Number(cell.replace(",", ".")) : NaN)),
  );
  const likely = likelyColumns(numbers.filter((row) => row.some((value) => !Number.isNaN(value))));
  const named = (["time", "packVoltage", "current"] as const).flatMap((channel) => {
    const at = likely[channel];
    return at === null ? [] : [`--column ${channel}=#${at + 1}`];
  });
  return named.length > 0 ? named.join(" ") : "--column time=#1 --column packVoltage=#2 --column current=#3";
}

/** Why the log has no usable clock. `given`: 0-based column that the user named, or null. */
export function timeNotice(
  choice: Exclude<TimeChoice, { clock: unknown }>,
  views: readonly ColumnView[],
  given: number | null,
  rows: number,
): Notice {
  const rate = [`--rate ${likelyRateHz(rows)}`];
  if ("doubt" in choice) {
    const { column, unit, stepS, durationS } = choice.doubt;
    const name = say.columnName(views[column]!.header, column);
    if (unit === "min:s" && stepS >= 1) {
      return {
        code: "time-unit-unclear",
        severity: "question",
        text: say.minutesOrHours(name, durationS),
        options: [rateOption(60 * stepS), rateOption(stepS)],
      };
    }
    // A clock as text has no unit to choose: only the rate helps.
    if (/clock|min:s/.test(unit)) {
      return {
        code: "time-unit-unclear",
        severity: "question",
        text: say.clockWithoutSeconds(name, rows),
        options: rate,
      };
    }
    const text = say.timeUnit(name, unit, stepS, durationS);
    return { code: "time-unit-unclear", severity: "question", text, options: timeUnits(unit, stepS, rate) };
  }
  if ("backward" in choice) {
    const { header, at, range } = choice.backward;
    const text = say.backwardTime(say.columnName(header, at), String(range.high), String(range.low));
    const stepS = (range.high - range.low) / (range.count - 1);
    const isPace = stepS >= 0.02 && stepS <= LONGEST_STEP_S;
    const options = isPace ? [`--rate ${Number((1 / stepS).toPrecision(3))}`] : rate;
    return { code: "time-backward", severity: "question", text, options };
  }
  if ("constant" in choice) {
    const view = choice.constant;
    const text = say.constantTime(say.columnName(view.header, view.at), shownValue(view));
    return { code: "time-constant", severity: "question", text, options: rate };
  }
  if (given !== null) {
    const text = say.unusableTime(say.columnName(views[given]!.header, given));
    return { code: "time-unusable", severity: "question", text, options: rate };
  }
  return { code: "time-missing", severity: "question", text: say.noTime(), options: rate };
}

const SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, us: 1e-6, ns: 1e-9 };

/** Units in which rows are apart as in a flight log. */
function timeUnits(unit: string, stepS: number, rate: readonly string[]): readonly string[] {
  const inUnit = stepS / unitOf("time", unit)!.factor;
  const fits = Object.entries(SECONDS).filter(
    ([, factor]) => inUnit * factor >= SHORTEST_STEP_S && inUnit * factor <= LONGEST_STEP_S,
  );
  const named = fits.map(([name]) => `--unit time=${name}`);
  return named.length > 0 ? named : rate;
}

/** Rows a second that loggers write. */
const USUAL_RATES_HZ = [1, 2, 4, 5, 10, 20, 25, 50, 100] as const;
/** A flight of this trade with its wait on the ground, seconds (common practice, no published source). */
const USUAL_LOG_S = 420;

/** The usual rate at which a log of so many rows is most like a flight in length. */
export function likelyRateHz(rows: number): number {
  const off = (rate: number) => Math.abs(Math.log(rows / rate / USUAL_LOG_S));
  return USUAL_RATES_HZ.reduce((best, rate) => (off(rate) < off(best) ? rate : best));
}

/** A log longer than this is asked about when its clock names no unit, seconds. */
const LONGEST_UNASKED_S = 1200;
/** More charge than any pack of this trade holds, mAh. */
const MOST_CHARGE_MAH = 60_000;
/** Times the capacity that a wrong sensor or a low stated capacity explains. */
const MOST_OF_CAPACITY = 1.5;

/** Whole numbers without a unit that make a log too long or too thirsty when they are seconds; else empty. */
export function unnamedTimeQuestions(
  found: FoundClock | null,
  view: ColumnView | undefined,
  currentA: Float64Array | undefined,
  capacityMah: number | null,
): readonly Notice[] {
  if (found === null || view === undefined || found.unnamedStepS === null) return [];
  const stepS = found.unnamedStepS;
  const durationS = stepS * (view.range.count - 1);
  const usedMah = currentA === undefined ? 0 : (meanOf(currentA) * durationS) / COULOMBS_PER_MAH;
  const mostMah = capacityMah === null ? MOST_CHARGE_MAH : capacityMah * MOST_OF_CAPACITY;
  if (durationS <= LONGEST_UNASKED_S && usedMah <= mostMah) return [];
  const name = say.columnName(view.header, view.at);
  const text =
    usedMah > mostMah
      ? say.timeUnitByCharge(name, stepS, usedMah)
      : say.timeUnit(name, "s", stepS, durationS);
  return [{ code: "time-unit-unclear", severity: "question", text, options: unnamedUnits(view, stepS) }];
}

/** The readings that make a log, the likeliest length first; seconds, which were doubted, last. */
function unnamedUnits({ range }: ColumnView, stepS: number): readonly string[] {
  const durationS = stepS * (range.count - 1);
  const hasMilliseconds = stepS / 1000 >= FAST_STEP_S && durationS / 1000 >= SHORTEST_FAST_LOG_S;
  const units = hasMilliseconds && durationS > 2000 * (USUAL_LOG_S / 60) ? ["ms", "0.1s"] : ["0.1s", "ms"];
  return [
    ...units.filter((unit) => unit !== "ms" || hasMilliseconds).map((unit) => `--unit time=${unit}`),
    ...(stepS === 1 ? [`--rate ${likelyRateHz(range.count)}`] : []),
    "--unit time=s",
  ];
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

function shownValue(view: ColumnView): string {
  return view.column.firstClock?.text ?? String(view.range.low);
}
