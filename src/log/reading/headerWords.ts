import { isOtherUnit, isUnitText, type Unit, unitsFromText } from "./units.ts";
import { QUANTITY_WORDS, SOURCE_WORDS } from "./wordLists.ts";

/** A header taken apart: lower-case words without accents, and what its unit can be. */
export interface HeaderWords {
  readonly words: readonly string[];
  readonly units: readonly Unit[];
  /** The header names a unit of a quantity that no channel holds. */
  readonly hasOtherUnit: boolean;
  /** The unit is a single letter, which may as well name one of several sensors. */
  readonly isLetterUnit: boolean;
  /** First number in the header, as in "Cell 3"; null if none. */
  readonly number: number | null;
}

const LONGEST_HEADER = 200;
/** Words of two letters and more that may be parts of a compound. */
const KNOWN_WORDS: ReadonlySet<string> = new Set(
  [...Object.values(QUANTITY_WORDS), ...Object.values(SOURCE_WORDS)]
    .flat()
    .filter((word) => word.length > 2 || word === "rx"),
);
const BRACKETED = /[[({<]([^[\](){}<>]{1,30})[\])}>]/g;
/** Units whose capitals are no start of a word; "mAh" also where it is glued to one. */
const CAPITAL_UNIT =
  /mAh(?![A-Za-z])|(?<![A-Za-z])[mcd][AV](?![A-Za-z])|(?<![A-Z])RPM(?![A-Za-z])|deg[CF](?![A-Za-z])/g;

/** Takes a header (and its cell of the units row, "" if none) apart. */
export function headerWords(header: string, unitsCell: string): HeaderWords {
  const bracketed = withoutBrackets(header.slice(0, LONGEST_HEADER));
  const apart =
    [unitsCell, ...bracketed.units].filter(isUnitText).map((unit) => ({ unit, rest: bracketed.rest }))[0] ??
    afterSlash(bracketed.rest) ??
    afterIn(bracketed.rest);
  const all = splitWords(apart?.rest ?? bracketed.rest).flatMap(splitCompound);
  const tail = apart === undefined || apart === null ? trailingUnit(all) : null;
  const unit = apart?.unit ?? tail?.unit ?? "";
  const words = tail?.words ?? all;
  const number = words.find((word) => /^\d{1,3}$/.test(word));
  return {
    words,
    units: unitsFromText(unit),
    hasOtherUnit: isOtherUnit(unit),
    isLetterUnit: /^[\s[({<]*[a-z][\s\])}>]*$/i.test(unit),
    number: number === undefined ? null : Number(number),
  };
}

/** A header without its brackets that hold units; other brackets give words. */
function withoutBrackets(header: string): { rest: string; units: readonly string[] } {
  const units: string[] = [];
  const rest = header.replace(BRACKETED, (_, inside: string) => {
    if (!isUnitText(inside)) return ` ${inside} `;
    units.push(inside);
    return " ";
  });
  return { rest, units };
}

/** "packvoltage", "Reglertemperatur": a word made of two known ones. */
function splitCompound(word: string): readonly string[] {
  if (word.length < 5 || KNOWN_WORDS.has(word)) return [word];
  for (let at = 2; at <= word.length - 3; at++) {
    const front = word.slice(0, at);
    const back = word.slice(at);
    if (KNOWN_WORDS.has(front) && KNOWN_WORDS.has(back)) return [front, back];
  }
  return [word];
}

/** "U/V", "Drehzahl / 1/min", "speed rev/min": what follows a slash as unit. */
function afterSlash(text: string): { unit: string; rest: string } | null {
  for (let at = text.indexOf("/"); at >= 0; at = text.indexOf("/", at + 1)) {
    const unit = text.slice(at + 1).trim();
    if (at > 0 && isUnitText(unit) && !isUnitText(lastWord(text.slice(0, at)) + text.slice(at))) {
      return { unit, rest: text.slice(0, at) };
    }
  }
  const tokens = text.trim().split(/[\s_]+/);
  const last = tokens.at(-1)!;
  if (last.includes("/") && isUnitText(last)) {
    return { unit: last, rest: tokens.slice(0, -1).join(" ") };
  }
  return null;
}

function lastWord(text: string): string {
  return text
    .trim()
    .split(/[\s_]+/)
    .at(-1)!;
}

/** "Pack temperature in deg C", "Current, A". */
function afterIn(text: string): { unit: string; rest: string } | null {
  const match = /^(.{1,150}?)(?:\sin\s|,\s?|:\s?)([^,:]{1,25})$/i.exec(text);
  if (match === null || !isUnitText(match[2]!)) return null;
  return { unit: match[2]!, rest: match[1]! };
}

/** Words of a header: parted at separators, capitals after small letters, and digits. */
export function splitWords(text: string): string[] {
  return text
    .replace(CAPITAL_UNIT, (unit) => ` ${unit.toLowerCase()} `)
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, "$1 $2")
    .replace(/(\p{L}{2,})(\d)/gu, "$1 $2")
    .replace(/([cCtTvVuUiI])(\d)/g, "$1 $2")
    .replace(/(\d)(\p{L})/gu, "$1 $2")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .split(/[^\p{L}\p{N}%°µμΩ/]+/u)
    .map((word) => word.replace(/^\/+|\/+$/g, ""))
    .filter((word) => word !== "");
}

/** Up to three words at the end that are a unit; a header of nothing else keeps them as words too. */
function trailingUnit(words: readonly string[]): { unit: string; words: readonly string[] } | null {
  for (const length of [3, 2, 1]) {
    const unit = words.slice(-length).join(" ");
    if (words.length < length || !isUnitText(unit)) continue;
    return { unit, words: words.length === length ? words : words.slice(0, -length) };
  }
  return null;
}
