import type { Notice } from "../../base/notices/index.ts";
import { plainNumber } from "../../base/quantity/index.ts";
import type { CheckedAnswers } from "./answers.ts";
import { chooseTime, clockOfRate } from "./chooseTime.ts";
import { type ColumnView, headerUnit } from "./columnView.ts";
import type { ClockFacts, ReadingOptions } from "./contract.ts";
import type { FoundClock } from "./foundClock.ts";
import { mayBeHours, meanStepS, rateOption } from "./minutesOrHours.ts";
import { timeNotice } from "./questions.ts";
import * as say from "./sentences.ts";
import type { Table } from "./table.ts";

export interface ReadTime {
  readonly timeS: Float64Array;
  readonly clock: ClockFacts;
  readonly found: FoundClock | null;
  readonly notices: readonly Notice[];
}

/** The time of each row: by the given rate, else by the log's clock; a question when it has none. */
export function readTime(
  table: Table,
  views: readonly ColumnView[],
  options: ReadingOptions,
  answers: CheckedAnswers,
): ReadTime | Notice {
  if (options.rateHz !== null && options.rateHz > 0) {
    return { ...clockOfRate(table.lines, options.rateHz), found: null, notices: [] };
  }
  const column = answers.columns.get("time") ?? null;
  const choice = chooseTime(views, {
    column,
    unit: answers.units.get("time") ?? null,
    dateOrder: options.dateOrder,
  });
  if (!("clock" in choice)) return timeNotice(choice, views, column, table.rows);
  const { clock } = choice;
  const notices: Notice[] =
    clock.ambiguousDate === null
      ? []
      : [
          {
            code: "date-ambiguous",
            severity: "note",
            text: say.ambiguousDate(clock.ambiguousDate),
            options: ["--date-order dmy", "--date-order mdy"],
          },
        ];
  const view = views[clock.column];
  if (view !== undefined && clock.unit === "min:s") notices.push(...hoursNote(view, clock.timeS));
  const against = view === undefined ? null : headerUnit(view, "time");
  const given = answers.units.get("time");
  if (
    view !== undefined &&
    against &&
    given &&
    against.name !== given.name &&
    clock.clock.kind === "elapsed"
  ) {
    const durationS = view.range.high - view.range.low;
    const inUnit = (factor: number) => `${plainNumber(durationS * factor)} s`;
    notices.push({
      code: "unit-contradicted",
      severity: "warning",
      text: say.timeUnitContradicted(
        say.columnName(view.header, view.at),
        [against.name, given.name],
        [inUnit(against.factor), inUnit(given.factor)],
      ),
      options: [`--unit time=${against.name}`],
    });
  }
  return { timeS: clock.timeS, clock: clock.clock, found: clock, notices };
}

/** What to do if minutes and seconds are hours and minutes, where they may be. */
function hoursNote({ column, header, at }: ColumnView, timeS: Float64Array): readonly Notice[] {
  const stepS = meanStepS(timeS, column.clockCount);
  if (!mayBeHours(column, stepS)) return [];
  const option = rateOption(60 * stepS);
  const text = say.minutesTaken(say.columnName(header, at), option);
  return [{ code: "time-unit-unclear", severity: "note", text, options: [option] }];
}
