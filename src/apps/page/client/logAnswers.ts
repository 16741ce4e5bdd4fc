import type { Answers } from "../messages.ts";
import { element } from "./element.ts";
import { typedNumber } from "./field.ts";
import { DATES, DELIMITERS } from "./pageWords.ts";
import { clientWords } from "./words.ts";

/** Answers about a log as a whole; a field left empty leaves it to the reader. */
export interface LogAnswers {
  readonly place: HTMLElement;
  readonly read: () => Omit<Answers, "columns" | "units">;
}

const { wholeLog: LABELS, asGuessed } = clientWords;

/** Fields for the sample rate, the cell count and how the numbers and dates are written. */
export function logAnswers(before: Answers): LogAnswers {
  const fields = {
    rateHz: numberField(before.rateHz),
    cells: numberField(before.cells),
    polePairs: numberField(before.polePairs),
    decimalMark: choice({ point: "point", comma: "comma" }, before.decimalMark),
    delimiter: choice({ ...DELIMITERS, "|": "bars", space: "spaces" }, before.delimiter),
    dateOrder: choice(DATES, before.dateOrder),
  };
  const labels = (Object.keys(fields) as (keyof typeof fields)[]).map((name) =>
    element("label", {}, LABELS[name], fields[name]),
  );
  return {
    place: element("div", { class: "log-answers" }, ...labels),
    read: () => ({
      rateHz: aboveZero(fields.rateHz),
      cells: aboveZero(fields.cells),
      polePairs: aboveZero(fields.polePairs),
      decimalMark: (fields.decimalMark.value || null) as Answers["decimalMark"],
      delimiter: fields.delimiter.value || null,
      dateOrder: (fields.dateOrder.value || null) as Answers["dateOrder"],
    }),
  };
}

function numberField(value: number | null): HTMLInputElement {
  const made = element("input", { type: "text", inputmode: "decimal", maxlength: "12" });
  made.value = value === null ? "" : String(value);
  return made;
}

/** What is no number above 0 is marked and left to the reader. */
function aboveZero(input: HTMLInputElement): number | null {
  const value = typedNumber(input.value);
  const isWrong = value !== null && !(value > 0);
  if (isWrong) input.setAttribute("aria-invalid", "true");
  else input.removeAttribute("aria-invalid");
  return isWrong ? null : value;
}

function choice(words: Readonly<Record<string, string>>, chosen: string | null): HTMLSelectElement {
  const made = element("select", {});
  made.append(element("option", { value: "" }, asGuessed));
  for (const [value, text] of Object.entries(words)) made.append(element("option", { value }, text));
  made.value = chosen ?? "";
  return made;
}
