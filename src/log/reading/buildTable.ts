import type { Notice } from "../../base/notices/index.ts";
import type { Decoding } from "./encoding.ts";
import type { Layout } from "./layout.ts";
import { MOST_COLUMNS } from "./limits.ts";
import { lineBlocks } from "./lines.ts";
import * as say from "./sentences.ts";
import { type Table, TableBuilder } from "./table.ts";

/**
 * All rows as numbers, with the layout that held. A log whose first rows do not prove the decimal mark is read
 * again when a later row does.
 */
export function buildTable(
  bytes: Uint8Array,
  decoding: Decoding,
  layout: Layout,
): { table: Table; layout: Layout } | Notice {
  const builder = new TableBuilder(layout);
  for (const block of lineBlocks(bytes, decoding)) {
    if (block.overlongLine !== null) {
      return { code: "line-too-long", severity: "refusal", text: say.lineTooLong(block.overlongLine) };
    }
    builder.addBlock(block);
    if (builder.tooLarge) return { code: "too-many-rows", severity: "refusal", text: say.tooManyRows() };
    if (builder.columnCount > MOST_COLUMNS) {
      return { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(builder.columnCount) };
    }
  }
  const table = builder.finished();
  const isUnproven =
    !layout.isMarkProven && table.defects.markChanges.count === 1 && table.mark !== layout.mark;
  if (!isUnproven) return { table, layout };
  return buildTable(bytes, decoding, { ...layout, mark: table.mark, isMarkProven: true });
}
