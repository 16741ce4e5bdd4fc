import { nearestWord } from "../../base/words/index.ts";
import type { Call } from "./commandDefinition.ts";
import { usageFailure } from "./failure.ts";
import { usageSentences } from "./sentences.ts";

export interface NumberRange {
  /** Both ends allowed. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly example: string;
  readonly isWhole?: boolean;
}

const PLAIN_NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;

/** The number given with an option, or null without it. */
export function numberOption(call: Call, option: string, range: NumberRange): number | null {
  const text = call.text(option);
  if (text === null) return null;
  const value = PLAIN_NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
  const isRight = value >= range.low && value <= range.high && (!range.isWhole || Number.isInteger(value));
  if (isRight) return value;
  const kind = range.isWhole ? "a whole number" : "a number";
  const allowed = `${kind} from ${range.low} to ${range.high} ${range.unit}`;
  throw usageFailure(usageSentences.numberWrong(`--${option}`, text, allowed, range.example));
}

/** One of the words that an option takes, or null without it. */
export function choiceOption<Choice extends string>(
  call: Call,
  option: string,
  choices: readonly Choice[],
): Choice | null {
  const text = call.text(option);
  if (text === null) return null;
  const found = choices.find((choice) => choice === text.toLowerCase());
  if (found !== undefined) return found;
  throw usageFailure(usageSentences.choiceWrong(`--${option}`, text, choices, nearestWord(text, choices)));
}
