import * as v from "valibot";
import { DEFAULTS, type DefaultPath, defaultSource } from "./defaults.ts";
import { NUMBER_KEYS, type NumberKey, type NumberKeyPath, TEXT_KEYS, type TextKeyPath } from "./keys.ts";

const LONGEST_TEXT = 200;

/** The number at a key of the table, with its range, description and example. */
export function number(path: NumberKeyPath) {
  const key: NumberKey = NUMBER_KEYS[path];
  const unit = key.unit === "1" ? "No unit." : `Unit: ${key.unit}.`;
  const description = `${key.what}. ${unit}${defaultSentence(path)}`;
  const base = key.isWhole ? v.pipe(v.number(), v.integer()) : v.number();
  return v.pipe(
    base,
    v.minValue(key.low),
    v.maxValue(key.high),
    v.description(description),
    v.metadata({ examples: [key.example] }),
  );
}

export function optionalNumber(path: Exclude<NumberKeyPath, DefaultPath>) {
  return v.optional(number(path));
}

export function numberOrDefault(path: NumberKeyPath & DefaultPath) {
  return v.optional(number(path), DEFAULTS[path].value);
}

function defaultSentence(path: string): string {
  const source = defaultSource(path);
  return source === null ? "" : ` When absent: ${source}.`;
}

/** The words at a key of the table. */
export function text(path: TextKeyPath) {
  const { what, example } = TEXT_KEYS[path];
  return words(what, example);
}

export function words(description: string, example: string) {
  return v.pipe(
    v.string(),
    v.minLength(1),
    v.maxLength(LONGEST_TEXT),
    v.description(description),
    v.metadata({ examples: [example] }),
  );
}
