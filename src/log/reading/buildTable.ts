import type { Notice } from "../../base/notices/index.ts";
import type { Decoding } from "./encoding.ts";
import { fillTable } from "./fillTable.ts";
import type { Layout } from "./layout.ts";
import type { LogBytes } from "./logBytes.ts";
import { type Table, TableBuilder } from "./table.ts";

/**
 * All rows as numbers, with the layout that held. A log whose first rows do not prove the decimal mark is read
 * again when a later row does.
 */
export function buildTable(
  bytes: LogBytes,
  decoding: Decoding,
  layout: Layout,
  usesCleanRows = true,
): { table: Table; layout: Layout } | Notice {
  const builder = new TableBuilder(layout);
  const refusal = fillTable(builder, bytes, decoding, layout.delimiter, usesCleanRows);
  if (refusal !== null) return refusal;
  const table = builder.finished();
  const isUnproven =
    !layout.isMarkProven && table.defects.markChanges.count === 1 && table.mark !== layout.mark;
  if (!isUnproven) return { table, layout };
  return buildTable(bytes, decoding, { ...layout, mark: table.mark, isMarkProven: true }, usesCleanRows);
}
