import { CHANNEL_NAMES, type ChannelName, isChannelName } from "../../base/channels/index.ts";
import { nearestWord } from "../../base/words/index.ts";
import type { ReadingOptions } from "../../log/reading/index.ts";
import type { Call, OptionDefinition } from "./commandDefinition.ts";
import { usageFailure } from "./failure.ts";
import { keyNumber } from "./knownNumbers.ts";
import { choiceOption, numberOption } from "./optionValues.ts";
import { usageSentences } from "./sentences.ts";

/** Options that say how to read a log; every command that reads one takes them. */
export const READING_OPTIONS: readonly OptionDefinition[] = [
  { flags: "--column <CHANNEL=HEADER>", help: "read this column (or #N) as the channel; repeatable" },
  {
    flags: "--unit <CHANNEL=UNIT>",
    help: "unit of the channel, e.g. current=mA; repeatable",
  },
  { flags: "--rate <HZ>", help: "rows per second, for a log without a usable clock" },
  { flags: "--decimal <MARK>", help: "decimal mark: point or comma" },
  { flags: "--delimiter <CHAR>", help: "comma, semicolon, tab, pipe, space or one character" },
  { flags: "--date-order <ORDER>", help: "dmy, mdy or ymd" },
  { flags: "--cells <N>", help: "cells in series" },
  { flags: "--pole-pairs <N>", help: "pole pairs of the motor, for a speed in electrical turns" },
];

const DELIMITERS: Readonly<Record<string, string>> = {
  comma: ",",
  semicolon: ";",
  tab: "\t",
  "\\t": "\t",
  pipe: "|",
  space: " ",
  spaces: " ",
};

/** Answers given on the command line. Throws a usage Failure that names the option, value and range. */
export function readingOptions(call: Call): ReadingOptions {
  return {
    columns: channelPairs(call, "column", "CHANNEL=HEADER or CHANNEL=#N"),
    units: channelPairs(call, "unit", "CHANNEL=UNIT"),
    rateHz: numberOption(call, "rate", { low: 0.001, high: 10_000, unit: "rows a second", example: "5" }),
    decimalMark: choiceOption(call, "decimal", ["point", "comma"]),
    delimiter: delimiterOption(call),
    dateOrder: choiceOption(call, "date-order", ["dmy", "mdy", "ymd"]),
    cells: keyNumber(call, "cells", "pack.cells", "8"),
    polePairs: keyNumber(call, "pole-pairs", "motor.polePairs", "7"),
  };
}

function channelPairs(call: Call, option: string, form: string): ReadonlyMap<ChannelName, string> {
  const pairs = new Map<ChannelName, string>();
  for (const text of call.texts(option)) {
    const at = text.indexOf("=");
    const value = text.slice(at + 1).trim();
    if (at < 1 || value === "") throw usageFailure(usageSentences.pairWrong(`--${option}`, text, form));
    const channel = channelNamed(option, text.slice(0, at).trim());
    if (pairs.has(channel)) throw usageFailure(usageSentences.pairTwice(`--${option}`, channel));
    pairs.set(channel, value);
  }
  return pairs;
}

function channelNamed(option: string, name: string): ChannelName {
  if (isChannelName(name)) return name;
  const sameLetters = CHANNEL_NAMES.find((known) => known.toLowerCase() === name.toLowerCase());
  const nearest = sameLetters ?? nearestWord(name, CHANNEL_NAMES);
  const names = CHANNEL_NAMES.filter((known) => !/^cellVoltage([2-9]|1\d)$/.test(known));
  throw usageFailure(usageSentences.channelUnknown(`--${option}`, name, nearest, names));
}

function delimiterOption(call: Call): string | null {
  const text = call.text("delimiter");
  if (text === null) return null;
  const named = Object.hasOwn(DELIMITERS, text.toLowerCase()) ? DELIMITERS[text.toLowerCase()] : undefined;
  const delimiter = named ?? text;
  if ([...delimiter].length !== 1) throw usageFailure(usageSentences.delimiterLong(text));
  return delimiter;
}
