import type { Facts } from "../../aircraft/facts.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { cellCountQuestion, restedPackV } from "../analysis/index.ts";
import { fewerCellsFit } from "./sentences.ts";

/** A rested cell that a pilot who insists on the count may have, volts; beyond it nothing lithium rests. */
const INSISTED_CELL_V: readonly [number, number] = [2, 4.5];
/** Nobody takes off with a cell resting below this, yet it is no damage, volts. */
const LOW_START_V: Readonly<Record<Facts["pack"]["chemistry"], number>> = {
  lipo: 3.75,
  lihv: 3.75,
  liion: 3.5,
  life: 3.2,
};
/** A charger leaves a full cell this near to full, volts. */
const FULL_WITHIN_V = 0.05;

/**
 * What the pack's volts at rest say about the cell count. A count that cannot fit is a question; one that the
 * user insists on is a warning while a cell of that count can rest there. A low but possible count of volts is
 * a warning when fewer cells would be exactly full.
 */
export function cellCountNotices(recording: Recording, facts: Facts, isInsisted: boolean): readonly Notice[] {
  const question = cellCountQuestion(recording, facts);
  const { cells } = facts.pack;
  const packV = restedPackV(recording);
  if (cells === null || packV === null) return question === null ? [] : [question];
  if (question === null) return fewerCells(packV, cells, fewerFullCells(recording, facts));
  const perCell = packV / cells;
  const isPossible = perCell >= INSISTED_CELL_V[0] && perCell <= INSISTED_CELL_V[1];
  return [isInsisted && isPossible ? { ...question, severity: "warning" } : question];
}

function fewerCells(packV: number, cells: number, fewer: number | null): readonly Notice[] {
  if (fewer === null) return [];
  return [
    {
      code: "cell-count-doubtful",
      severity: "warning",
      text: fewerCellsFit(packV, cells, fewer),
      options: [`--cells ${fewer}`],
    },
  ];
}

/** The smaller count of cells that would be exactly full where the stated ones would start low; else null. */
export function fewerFullCells(recording: Recording, { pack }: Facts): number | null {
  const packV = restedPackV(recording);
  if (pack.cells === null || packV === null || packV / pack.cells >= LOW_START_V[pack.chemistry]) return null;
  const fewer = Math.round(packV / pack.fullCellV);
  const isFull = Math.abs(packV / fewer - pack.fullCellV) <= FULL_WITHIN_V;
  return fewer >= 1 && fewer < pack.cells && isFull ? fewer : null;
}
