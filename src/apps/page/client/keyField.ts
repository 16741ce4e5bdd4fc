import type { AircraftKey } from "../../../aircraft/index.ts";
import {
  type DisplayUnits,
  displayedUnit,
  fieldNumber,
  numberFromDisplayed,
  unitText,
} from "../../../base/quantity/index.ts";
import { capital } from "../../../base/words/index.ts";
import { DIFFERENCES } from "./aircraftGroups.ts";
import { element } from "./element.ts";
import { type Field, field, textInput, typedNumber } from "./field.ts";
import { rangeWords } from "./numberField.ts";
import { clientWords } from "./words.ts";

export type KeyValue = number | string | null;

/** One key of the aircraft file as a line of the form. */
export interface KeyField extends Field {
  readonly path: string;
  /** What was typed, in the unit of the file; undefined when it is no number. */
  readonly read: () => KeyValue | undefined;
}

export function keyField(
  key: AircraftKey,
  value: KeyValue,
  units: DisplayUnits,
  typed: (field: KeyField) => void,
): KeyField {
  const unit = key.number === null ? "" : unitOf(key);
  const shown = (number: number | string): string =>
    typeof number === "number" ? fieldNumber(number, unit, units) : number;
  const before = value === null ? "" : shown(value);
  const input = inputFor(key, before);
  input.dataset.key = key.path;
  const made = field(
    {
      label: `${labelOf(key)}${key.isRequired ? " (needed)" : ""}`,
      unit: unitText(displayedUnit(unit, units)).replace(/^1$/, ""),
      help: helpOf(key, shown, units),
    },
    input,
  );
  const read = (): KeyValue | undefined => {
    if (key.number === null) return input.value.trim() === "" ? null : input.value.trim();
    if (input.value === before) return value;
    const number = typedNumber(input.value);
    if (number === null) return null;
    return Number.isNaN(number) ? undefined : numberFromDisplayed(number, unit, units);
  };
  const own: KeyField = { ...made, path: key.path, read };
  input.addEventListener("input", () => typed(own));
  return own;
}

/** The first part of what a key is; the rest is help. */
export function labelOf({ what }: AircraftKey): string {
  return what.split(/; |, or |\.$/)[0] ?? what;
}

/** What to write on the line, in the units shown. */
export function allowedWords(key: AircraftKey, units: DisplayUnits): string {
  const { number, choices } = key;
  if (number === null) return choices === null ? "words of your own" : `one of ${choices.join(", ")}`;
  return rangeWords({ ...number, unit: unitOf(key) }, units);
}

export function unitOf({ path, number }: AircraftKey): string {
  const unit = number?.unit ?? "";
  return DIFFERENCES.includes(path) ? `${unit} difference` : unit;
}

function inputFor({ choices, number }: AircraftKey, value: string): HTMLInputElement | HTMLSelectElement {
  if (choices === null) return textInput(value, number !== null);
  const select = element("select", {}, element("option", { value: "" }, ""));
  for (const choice of choices) select.append(element("option", { value: choice }, choice));
  if (value !== "" && !choices.includes(value)) select.append(element("option", { value }, value));
  select.value = value;
  return select;
}

function helpOf(key: AircraftKey, shown: (value: number | string) => string, units: DisplayUnits): string {
  const range = key.choices === null && key.number === null ? "" : `${capital(allowedWords(key, units))}.`;
  const fallback =
    key.fallback === null ? "" : clientWords.whenEmpty(shown(key.fallback.value), key.fallback.source);
  const more = capital(key.what.slice(labelOf(key).length).replace(/^[;,] /, ""));
  const about = more === "" || more === "." ? "" : `${more.replace(/\.$/, "")}.`;
  return [about, range, fallback].filter((part) => part !== "").join(" ");
}
