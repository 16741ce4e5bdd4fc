import { type ChannelName, isCellChannel, MOST_CELLS } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { cellCountingStart } from "./candidate.ts";
import type { LostCell } from "./cellSum.ts";
import type { ColumnView } from "./columnView.ts";
import * as say from "./sentences.ts";
import type { Table } from "./table.ts";

/** Numbers, from 1, of the cell columns in which every value is zero. */
export function deadCellsOf(views: readonly ColumnView[]): readonly number[] {
  const firstCell = cellCountingStart(views);
  return views.flatMap((view) => {
    const isDead = view.range.isDead && view.column.filledCount > 0;
    const isCell = view.quantity === "voltage" && view.sources.has("cell") && view.excluded === null;
    if (!isDead || !isCell || view.name.number === null) return [];
    const cell = view.name.number + 1 - firstCell;
    return cell >= 1 && cell <= MOST_CELLS ? [cell] : [];
  });
}

/** Some cell columns show volts, others only zeros: a smaller pack or open leads, which only the pilot knows. */
export function deadCellQuestions(
  channels: ReadonlyMap<ChannelName, Float64Array>,
  deadCells: readonly number[],
  cells: number | null,
): readonly Notice[] {
  const live = [...channels.keys()].filter(isCellChannel).length;
  if (cells !== null || deadCells.length === 0 || live < 2) return [];
  if (channels.has("packVoltage") && packCells(channels) === live) return [];
  const all = live + deadCells.length;
  const hasGap = deadCells.some((cell) => cell <= live);
  const counts = hasGap ? [all, live] : [live, all];
  return [
    {
      code: "cell-columns-dead",
      severity: "question",
      text: say.deadCells(live, all, deadCells),
      options: counts.map((count) => `--cells ${count}`),
    },
  ];
}

/** Cells in series by pack volts over the mean of the cells in the first row that has both. */
function packCells(channels: ReadonlyMap<ChannelName, Float64Array>): number | null {
  const pack = channels.get("packVoltage")!;
  const cells = [...channels].filter(([channel]) => isCellChannel(channel)).map(([, volts]) => volts);
  for (let row = 0; row < pack.length; row++) {
    const mean = cells.reduce((sum, volts) => sum + volts[row]!, 0) / cells.length;
    if (mean > 2 && pack[row]! > 2) return Math.round(pack[row]! / mean);
  }
  return null;
}

/** Says which cell's volts in the pack's sum are estimated, and from where. */
export function lostCellNotices(lost: readonly LostCell[], table: Table): readonly Notice[] {
  return lost.map(({ cell, rows, firstRow, share }) => {
    const line = table.lines.lineOfRow(firstRow);
    const isWhole = rows === table.rows;
    return {
      code: "cell-lead-lost",
      severity: "warning",
      count: rows,
      lines: [line],
      text: isWhole ? say.cellNeverShown(cell) : say.cellLost(cell, rows, line, share),
    };
  });
}
