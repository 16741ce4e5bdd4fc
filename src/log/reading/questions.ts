import type { Notice } from "../../base/notices/index.ts";
import { cellsOfLine, isNumber } from "./cells.ts";
import type { TimeChoice } from "./chooseTime.ts";
import type { ColumnView } from "./columnView.ts";
import { LONGEST_STEP_S, SHORTEST_STEP_S } from "./elapsedClock.ts";
import type { Layout, LayoutProblem } from "./layout.ts";
import * as say from "./sentences.ts";

/** Why the lines of a file could not be cut into named columns. */
export function layoutProblemNotice(layout: LayoutProblem): Notice {
  const names = layout.header.length;
  switch (layout.problem) {
    case "noRows":
      return noRowsNotice(layout.header.join(layout.delimiter), layout.headerLine);
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
        options: ["--column time=#N --column packVoltage=#N --column current=#N"],
      };
  }
}

/** Nothing to read under the header. `headerLine` 0: no header either. */
export function noRowsNotice(header: string, headerLine: number): Notice {
  return { code: "no-data-rows", severity: "refusal", text: say.noDataRows(header, headerLine) };
}

/** A log that starts with numbers: the first column that rises is offered as the time. */
export function noHeaderNotice(layout: Layout, head: readonly string[]): Notice {
  const rows = head
    .slice(layout.bodyLine - 1, layout.bodyLine + 19)
    .map((line) => cellsOfLine(line, layout.delimiter));
  const rising = layout.header.findIndex((_, at) =>
    rows.every((row, index) => index === 0 || rises(rows[index - 1]![at], row[at])),
  );
  const time = rising < 0 ? "N" : String(rising + 1);
  const option = `--column time=#${time} --column packVoltage=#N --column current=#N`;
  return {
    code: "no-header",
    severity: "question",
    text: say.noHeader(layout.bodyLine, option),
    options: [option],
  };
}

function rises(before: string | undefined, after: string | undefined): boolean {
  if (before === undefined || after === undefined || !isNumber(before) || !isNumber(after)) return false;
  return Number(after.replace(",", ".")) > Number(before.replace(",", "."));
}

/** Why the log has no usable clock. `given`: 0-based column that the user named, or null. */
export function timeNotice(
  choice: Exclude<TimeChoice, { clock: unknown }>,
  views: readonly ColumnView[],
  given: number | null,
): Notice {
  const rate = ["--rate HZ"];
  if ("doubt" in choice) {
    const { column, unit, stepS, durationS } = choice.doubt;
    const text = say.timeUnit(say.columnName(views[column]?.header ?? "", column), unit, stepS, durationS);
    return { code: "time-unit-unclear", severity: "question", text, options: timeUnits(unit, stepS) };
  }
  if ("constant" in choice) {
    const view = choice.constant;
    const text = say.constantTime(say.columnName(view.header, view.at), shownValue(view));
    return { code: "time-constant", severity: "question", text, options: rate };
  }
  if (given !== null) {
    const text = say.unusableTime(say.columnName(views[given]?.header ?? "", given));
    return { code: "time-unusable", severity: "question", text, options: rate };
  }
  return { code: "time-missing", severity: "question", text: say.noTime(), options: rate };
}

const SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, us: 1e-6, ns: 1e-9 };

/** Units in which rows are apart as in a flight log. */
function timeUnits(unit: string, stepS: number): readonly string[] {
  const inUnit = stepS / (SECONDS[unit] ?? 1);
  const fits = Object.entries(SECONDS).filter(
    ([, factor]) => inUnit * factor >= SHORTEST_STEP_S && inUnit * factor <= LONGEST_STEP_S,
  );
  const named = fits.map(([name]) => `--unit time=${name}`);
  return named.length > 0 ? named : ["--unit time=UNIT", "--rate HZ"];
}

function shownValue(view: ColumnView): string {
  return view.column.firstClock?.text ?? String(view.range.low);
}
