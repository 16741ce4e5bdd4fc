import type { Column } from "./column.ts";
import { type ColumnRange, columnRange } from "./columnRange.ts";
import { type HeaderWords, headerWords } from "./headerWords.ts";
import { dropStrayCells } from "./strayCells.ts";
import type { Table } from "./table.ts";
import type { Dimension, Unit } from "./units.ts";
import {
  EXCLUDING_WORDS,
  QUANTITY_WORDS,
  type QuantityWord,
  SOURCE_WORDS,
  type SourceWord,
} from "./wordLists.ts";

/** One file column as the choice of channels sees it: what its header says and what its numbers are. */
export interface ColumnView {
  /** 0-based. */
  readonly at: number;
  readonly header: string;
  readonly name: HeaderWords;
  readonly quantity: QuantityWord | null;
  readonly sources: ReadonlySet<SourceWord>;
  /** Why the header rules out every channel, or null. */
  readonly excluded: string | null;
  readonly column: Column;
  readonly values: Float64Array;
  readonly range: ColumnRange;
}

const QUANTITY_OF_DIMENSION: Readonly<Record<Exclude<Dimension, "ratio" | "other">, QuantityWord>> = {
  time: "time",
  voltage: "voltage",
  current: "current",
  rotation: "rotation",
  temperature: "temperature",
  charge: "charge",
  length: "altitude",
  velocity: "speed",
};
const QUANTITIES = Object.keys(QUANTITY_WORDS) as QuantityWord[];
const SOURCES = Object.keys(SOURCE_WORDS) as SourceWord[];
const VECTOR_PARTS: ReadonlySet<string> = new Set(["x", "y", "z", "w", "north", "east", "up"]);
const BARE_PACK_WORDS: ReadonlySet<string> = new Set([
  "pack",
  "battery",
  "batt",
  "bat",
  "akku",
  "accu",
  "lipo",
  "batterie",
  "bateria",
]);
/** Reasons for exclusion that a plainly named quantity overrules: "throttle pwm", "baro altitude". */
const OVERRULED: Readonly<Partial<Record<QuantityWord, readonly string[]>>> = {
  throttle: ["pwm", "duty", "channel", "servo"],
  altitude: ["baro", "barometer", "pressure"],
  time: ["min", "frames"],
};

/** The view of every column of a table. */
export function viewColumns(table: Table, units: readonly string[] | null): ColumnView[] {
  return table.columns.map((_, at) => viewColumn(table, units?.[at] ?? "", at));
}

function viewColumn(table: Table, unitsCell: string, at: number): ColumnView {
  const header = table.names[at]!;
  const column = table.columns[at]!;
  const name = headerWords(header, unitsCell);
  const sources = new Set(
    SOURCES.filter((source) => name.words.some((word) => isSourceWord(source, word, name))),
  );
  const named = quantityOf(name, sources);
  dropStrayCells(column, named === "time", (row) => table.lines.lineOfRow(row));
  const values = column.finished();
  const range = columnRange(values);
  const quantity = named ?? (isBarePack(name, range) ? "voltage" : null);
  return {
    at,
    header,
    name,
    quantity,
    sources,
    column,
    values,
    range,
    excluded: exclusion(name, quantity),
  };
}

/** "Battery" or "Pack" with nothing else over values that are volts of a pack and no per cent. */
function isBarePack(name: HeaderWords, range: ColumnRange): boolean {
  const isNamed = name.words.length > 0 && name.words.every((word) => BARE_PACK_WORDS.has(word));
  return isNamed && name.units.length === 0 && !range.isWhole && range.median >= 9 && range.median <= 70;
}

function isSourceWord(source: SourceWord, word: string, name: HeaderWords): boolean {
  if (!SOURCE_WORDS[source].includes(word)) return false;
  return word !== "c" || name.number !== null;
}

/** The unit decides where it can mean one quantity only; else the words. */
function quantityOf(name: HeaderWords, sources: ReadonlySet<SourceWord>): QuantityWord | null {
  const byWords = QUANTITIES.filter((quantity) =>
    name.words.some((word) => isQuantityWord(quantity, word, name, sources)),
  );
  const isTurning = sources.has("motor") || sources.has("propeller") || sources.has("controller");
  const dimensions = [...new Set(name.units.map((unit) => unit.dimension))];
  if (byWords.includes("throttle")) return "throttle";
  const ofUnit = dimensions.flatMap((each) =>
    each === "ratio" || each === "other" ? [] : [QUANTITY_OF_DIMENSION[each]],
  );
  const agreed = ofUnit.find((quantity) => byWords.includes(quantity));
  if (agreed !== undefined) return agreed;
  const isSensorLetter = name.isLetterUnit && byWords.length > 0;
  if (ofUnit.length > 0 && !isSensorLetter) return ofUnit[0]!;
  if (dimensions.includes("ratio")) return null;
  const first = byWords[0] ?? null;
  if (first === "speed" && isTurning) return "rotation";
  if (first === "time" && isTurning && name.words.includes("t")) return "temperature";
  if (first === null && sources.has("cell") && name.number !== null) return "voltage";
  if (first === null && name.words.join(" ") === "position z") return "altitude";
  return first;
}

/** A single letter counts only beside words that say where: "U", "I batt", "V 2". */
function isQuantityWord(
  quantity: QuantityWord,
  word: string,
  name: HeaderWords,
  sources: ReadonlySet<SourceWord>,
): boolean {
  if (!QUANTITY_WORDS[quantity].includes(word)) return false;
  if (word.length > 1) return true;
  const others = name.words.filter((each) => each !== word && !/^\d+$/.test(each));
  return others.length === 0 || (others.length <= sources.size + 1 && others.every(isAnySource));
}

function isAnySource(word: string): boolean {
  return SOURCES.some((source) => SOURCE_WORDS[source].includes(word));
}

function exclusion(name: HeaderWords, quantity: QuantityWord | null): string | null {
  const overruled = quantity === null ? [] : (OVERRULED[quantity] ?? []);
  for (const [words, reason] of EXCLUDING_WORDS) {
    const word = name.words.find((each) => words.includes(each) && !overruled.includes(each));
    if (word !== undefined) return `"${word}" in the header: ${reason}`;
  }
  const part = name.words.find((word) => VECTOR_PARTS.has(word));
  if (part !== undefined && quantity !== "altitude" && name.words.length > 1 && quantity !== "time") {
    return `"${part}" in the header: one part of a vector, no channel needs it`;
  }
  const isDegrees = quantity === "temperature" || quantity === "time" || quantity === "date";
  if (name.hasOtherUnit && !isDegrees) return "its unit belongs to a quantity that no channel holds";
  return null;
}

/** The header's unit of one dimension, or null. */
export function headerUnit(view: ColumnView, dimension: Dimension): Unit | null {
  return view.name.units.find((unit) => unit.dimension === dimension) ?? null;
}
