import { MEASURE_NAMES, MEASURE_UNITS } from "../../flight/analysis/measures.ts";
import type { LogbookEntry } from "./entry.ts";

type Cell = string | number | null;

/** First characters by which a spreadsheet takes a text cell for a formula (OWASP ASVS 1.2.10; CR by other sources). */
const FORMULA_START = /^[=+\-@\t\r\0]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * The flights as a table for a spreadsheet (RFC 4180): what was given, then each measure with the ends of
 * its interval. Numbers stay numbers with all their digits; what is not known is an empty cell.
 */
export function flightsCsv(entries: readonly LogbookEntry[]): string {
  const rows = [headerOf(), ...entries.map(rowOf)];
  return rows.map((row) => `${row.map(cellText).join(",")}\r\n`).join("");
}

function headerOf(): readonly Cell[] {
  const measures = MEASURE_NAMES.flatMap((name) => {
    const unit = MEASURE_UNITS[name] === "1" ? "" : ` (${MEASURE_UNITS[name]})`;
    return [`${name}${unit}`, `${name} low`, `${name} high`];
  });
  return [...Object.keys(factsOfRow(null)), ...measures];
}

function rowOf(entry: LogbookEntry): readonly Cell[] {
  const measures = MEASURE_NAMES.flatMap((name): readonly Cell[] => {
    const quantity = entry.check.measures[name];
    return quantity.value === null ? [null, null, null] : [quantity.value, quantity.low, quantity.high];
  });
  return [...Object.values(factsOfRow(entry)), ...measures];
}

function factsOfRow(entry: LogbookEntry | null): Readonly<Record<string, Cell>> {
  const given = entry?.given ?? null;
  return {
    flight: entry?.flight ?? null,
    aircraft: entry?.aircraft ?? null,
    kind: entry?.check.kind ?? null,
    complete: entry === null ? null : entry.check.complete ? "yes" : "no",
    startsAt: entry?.startsAt ?? null,
    log: entry?.log.file ?? null,
    pack: given?.pack ?? null,
    propeller: given?.propeller ?? null,
    "ambient (degC)": given?.ambientC ?? null,
    "start (%)": given?.startPct ?? null,
    "putBack (mAh)": given?.putBackMah ?? null,
    "flown (s)": given?.flownS ?? null,
    note: given?.note ?? null,
    headline: entry?.check.headline ?? null,
  };
}

/** One cell: a text that a spreadsheet would run is marked as text by a leading apostrophe. */
export function cellText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  const text = FORMULA_START.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
