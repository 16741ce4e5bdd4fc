import { minutesAndSeconds } from "../../../base/quantity/index.ts";
import {
  type GivenFacts,
  NOTHING_GIVEN,
  propellerSize,
  propellerText,
} from "../../../season/logbook/index.ts";
import type { Call, OptionDefinition } from "../commandDefinition.ts";
import { usageFailure } from "../failure.ts";
import { givenNumber } from "../knownNumbers.ts";
import { logbookSentences } from "./sentences.ts";

const LONGEST_NAME = 60;
const LONGEST_NOTE = 500;
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const MINUTES = /^(\d{1,3}):([0-5]\d)$/;

/** Facts of a flight that no log holds. */
export const GIVEN_OPTIONS: readonly OptionDefinition[] = [
  { flags: "--pack <NAME>", help: "which pack flew" },
  { flags: "--propeller <SIZE>", help: "propeller of this flight when it is not the fitted one, as 18x10" },
  { flags: "--ambient <C>", help: "air temperature of the day, degrees Celsius" },
  { flags: "--start-pct <N>", help: "state of charge at the start, percent" },
  { flags: "--put-back <MAH>", help: "what the charger put back, mAh; of all flights named together" },
  { flags: "--flown <M:SS>", help: "flight time by your own watch" },
  { flags: "--date <YYYY-MM-DD>", help: "day of the flight, where the log does not tell" },
  { flags: "--note <TEXT>", help: "a line of your own" },
];

/** The facts given with a call; null where none was. Throws a usage Failure. */
export function givenFacts(call: Call): GivenFacts {
  return {
    ...NOTHING_GIVEN,
    pack: textOption(call, "pack", LONGEST_NAME),
    propeller: propellerOption(call),
    ambientC: givenNumber(call, "ambient", "ambientC"),
    startPct: givenNumber(call, "start-pct", "startPct"),
    putBackMah: givenNumber(call, "put-back", "putBackMah"),
    flownS: flownOption(call),
    date: dateOption(call),
    note: textOption(call, "note", LONGEST_NOTE),
  };
}

export function textOption(call: Call, option: string, most: number): string | null {
  const text = call.text(option)?.trim() ?? null;
  if (text === null) return null;
  const isLine = text.length >= 1 && text.length <= most && !/[\r\n]/.test(text);
  if (!isLine) throw usageFailure(logbookSentences.textWrong(`--${option}`, most));
  return text;
}

/** Facts as the words that give them. */
export function wordsOfFacts(facts: Partial<GivenFacts>): readonly string[] {
  return GIVEN_OPTIONS.flatMap(({ flags }) => {
    const option = flags.split(" ")[0] ?? "";
    const fact = FACT_OF[option];
    const value = fact === undefined ? null : (facts[fact] ?? null);
    if (value === null) return [];
    return [option, option === "--flown" ? minutesAndSeconds(Number(value)) : String(value)];
  });
}

const FACT_OF: Readonly<Record<string, keyof GivenFacts>> = {
  "--pack": "pack",
  "--propeller": "propeller",
  "--ambient": "ambientC",
  "--start-pct": "startPct",
  "--put-back": "putBackMah",
  "--flown": "flownS",
  "--date": "date",
  "--note": "note",
};

function propellerOption(call: Call): string | null {
  const text = call.text("propeller");
  if (text === null) return null;
  const size = propellerSize(text);
  if (size === null) throw usageFailure(logbookSentences.propellerWrong(text));
  return propellerText(size);
}

function flownOption(call: Call): number | null {
  const text = call.text("flown");
  if (text === null) return null;
  const found = MINUTES.exec(text.trim());
  const seconds = found === null ? 0 : 60 * Number(found[1]) + Number(found[2]);
  if (seconds <= 0) throw usageFailure(logbookSentences.flownWrong(text));
  return seconds;
}

function dateOption(call: Call): string | null {
  const text = call.text("date");
  if (text === null) return null;
  if (!isDay(text.trim())) throw usageFailure(logbookSentences.dateWrong(text));
  return text.trim();
}

/** A day of the calendar: 2026-02-30 is none. */
function isDay(text: string): boolean {
  if (!DAY.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}
