import {
  type DisplayUnits,
  displayedUnit,
  fieldNumber,
  numberFromDisplayed,
  unitText,
} from "../../../base/quantity/index.ts";
import { type Field, field, textInput, typedNumber } from "./field.ts";
import { clientWords } from "./words.ts";

/** Both ends allowed; in `unit`. */
export interface NumberRange {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly isWhole?: boolean;
}

/** A line of a form for one number, shown in the units chosen. */
export interface NumberField extends Field {
  readonly input: HTMLInputElement;
  /** What was typed, in the range's own unit; null when empty. Undefined where it is none or too far: the line says so. */
  readonly read: () => number | null | undefined;
}

export interface NumberLine {
  readonly label: string;
  readonly help?: string;
  readonly range: NumberRange;
  readonly value: number | null;
}

export function numberField({
  label,
  help = "",
  range,
  value,
  units,
}: NumberLine & { readonly units: DisplayUnits }): NumberField {
  const before = value === null ? "" : fieldNumber(value, range.unit, units);
  const input = textInput(before, true);
  const own = field({ label, unit: unitText(displayedUnit(range.unit, units)), help }, input);
  const read = (): number | null | undefined => {
    const isAsItWas = input.value === before;
    const found = isAsItWas ? { value } : numberIn(input.value, label, range, units);
    own.fault("wrong" in found ? found.wrong : null);
    return "wrong" in found ? undefined : found.value;
  };
  return { ...own, input, read };
}

function numberIn(
  text: string,
  label: string,
  range: NumberRange,
  units: DisplayUnits,
): { readonly value: number | null } | { readonly wrong: string } {
  const typed = typedNumber(text);
  if (typed === null) return { value: null };
  if (Number.isNaN(typed)) return { wrong: clientWords.wrongNumber(label) };
  const value = numberFromDisplayed(typed, range.unit, units);
  const isRight = value >= range.low && value <= range.high && (!range.isWhole || Number.isInteger(value));
  return isRight ? { value } : { wrong: clientWords.outOfRange(label, rangeWords(range, units)) };
}

/** What to write on the line, e.g. "a whole number from 1 to 16", in the units shown. */
export function rangeWords({ low, high, unit, isWhole }: NumberRange, units: DisplayUnits): string {
  const [from, to] = [low, high].map((end) => fieldNumber(end, unit, units));
  return `${isWhole ? "a whole number" : "a number"} from ${from} to ${to}`;
}
