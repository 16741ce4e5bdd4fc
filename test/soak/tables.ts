import { isDeepStrictEqual } from "node:util";
import { buildTable } from "../../src/log/reading/buildTable.ts";
import { type Decoding, findEncoding } from "../../src/log/reading/encoding.ts";
import { headLinesOf } from "../../src/log/reading/head.ts";
import { findLayout, type Layout } from "../../src/log/reading/layout.ts";
import type { Table } from "../../src/log/reading/table.ts";
import { seededRandom } from "../generator/random.ts";
import { flightNumbers } from "./flightNumbers.ts";
import { bytesOf, plainTable, textOf } from "./logText.ts";
import { mutated } from "./mutations.ts";

/** Encoding and layout of some bytes; null when they have no table. */
export function placeOf(bytes: Uint8Array): { readonly decoding: Decoding; readonly layout: Layout } | null {
  const decoding = findEncoding(bytes);
  if (typeof decoding === "string") return null;
  const head = headLinesOf(bytes, decoding);
  const layout = findLayout(head.lines, { delimiter: null, decimalMark: null, isByNumber: false });
  return "problem" in layout ? null : { decoding, layout };
}

/** Everything a table holds, for comparing. */
export function contentOf({ names, columns, rows, dataLines, lines, defects, mark }: Table): unknown {
  return {
    names,
    columns: columns.map((column) => column.finished()),
    unreadable: columns.map((column) => [column.blankCount, column.missingWordCount, column.unreadable]),
    counts: { rows, dataLines, mark },
    lines: Array.from({ length: rows }, (_, row) => lines.lineOfRow(row)),
    defects,
  };
}

/** A log long enough that rows of plain numbers and lines of text take turns. */
function longLog(seed: number): Uint8Array {
  const random = seededRandom(seed).fork("long");
  const rows = Array.from({ length: random.whole(2, 6) }, () => flightNumbers(random)).flat();
  return bytesOf(textOf(plainTable(rows.map((row, at) => ({ ...row, ms: 100 * at })))));
}

/** Null when a long mutated log gives one table whether its plain rows are read as numbers or all as text. */
export function bothWaysTrial(seed: number): string | null {
  const random = seededRandom(seed);
  const { bytes, how } = mutated(mutated(longLog(seed), random.fork("first")).bytes, random.fork("mutation"));
  const found = placeOf(bytes);
  if (found === null) return null;
  const [quick, slow] = [true, false].map((usesCleanRows) => {
    const built = buildTable(bytes, found.decoding, found.layout, usesCleanRows);
    return "code" in built ? built : contentOf(built.table);
  });
  return isDeepStrictEqual(quick, slow) ? null : `${how.join(", ")}: two tables`;
}
