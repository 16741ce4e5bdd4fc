import { isOtherUnit, isUnitText, type Unit, unitsFromText } from "./units.ts";

/** A header taken apart: lower-case words without accents, and what its unit can be. */
export interface HeaderWords {
  readonly words: readonly string[];
  readonly units: readonly Unit[];
  /** The header names a unit of a quantity that no channel holds. */
  readonly hasOtherUnit: boolean;
  /** First number in the header, as in "Cell 3"; null if none. */
  readonly number: number | null;
}

const LONGEST_HEADER = 200;
const BRACKETED = /[[({<]([^[\](){}<>]{1,30})[\])}>]/g;
/** Units whose capitals are no start of a word; "mAh" also where it is glued to one. */
const CAPITAL_UNIT =
  /mAh(?![A-Za-z])|(?<![A-Za-z])[mcd][AV](?![A-Za-z])|(?<![A-Z])RPM(?![A-Za-z])|deg[CF](?![A-Za-z])/g;

/** Takes a header (and its cell of the units row, "" if none) apart. */
export function headerWords(header: string, unitsCell: string): HeaderWords {
  let rest = header.slice(0, LONGEST_HEADER);
  let units: readonly Unit[] = unitsFromText(unitsCell);
  let hasOtherUnit = unitsCell !== "" && isOtherUnit(unitsCell);
  rest = rest.replace(BRACKETED, (whole, inside: string) => {
    if (!isUnitText(inside)) return ` ${inside} `;
    if (units.length === 0 && !hasOtherUnit) {
      units = unitsFromText(inside);
      hasOtherUnit = isOtherUnit(inside);
    }
    return whole.length > 0 ? " " : "";
  });
  if (units.length === 0 && !hasOtherUnit) {
    const slashed = afterSlash(rest) ?? afterIn(rest);
    if (slashed !== null) {
      units = unitsFromText(slashed.unit);
      hasOtherUnit = isOtherUnit(slashed.unit);
      rest = slashed.rest;
    }
  }
  let words = splitWords(rest);
  if (units.length === 0 && !hasOtherUnit) {
    const tail = trailingUnit(words);
    units = tail.units;
    hasOtherUnit = tail.hasOtherUnit;
    words = tail.words;
  }
  const numbers = words.filter((word) => /^\d{1,3}$/.test(word));
  return { words, units, hasOtherUnit, number: numbers[0] === undefined ? null : Number(numbers[0]) };
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
  const last = tokens.at(-1) ?? "";
  if (tokens.length > 0 && last.includes("/") && isUnitText(last)) {
    return { unit: last, rest: tokens.slice(0, -1).join(" ") };
  }
  return null;
}

function lastWord(text: string): string {
  return (
    text
      .trim()
      .split(/[\s_]+/)
      .at(-1) ?? ""
  );
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

function trailingUnit(words: readonly string[]) {
  const none = { units: [] as readonly Unit[], hasOtherUnit: false, words: [...words] };
  for (const length of [3, 2, 1]) {
    if (words.length < length) continue;
    const tail = words.slice(-length).join(" ");
    if (!isUnitText(tail)) continue;
    const units = unitsFromText(tail);
    const isAlone = words.length === length;
    return { units, hasOtherUnit: units.length === 0, words: isAlone ? [...words] : words.slice(0, -length) };
  }
  const plainDegrees = words.at(-1);
  if (plainDegrees !== undefined && /^°[cf]$/.test(plainDegrees)) {
    return { units: unitsFromText(plainDegrees), hasOtherUnit: false, words: words.slice(0, -1) };
  }
  return none;
}
