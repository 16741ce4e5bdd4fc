import { plainNumber } from "../../base/quantity/index.ts";

export const fewerCellsFit = (packV: number, cells: number, fewer: number): string =>
  `The pack rests at ${plainNumber(packV)} V: ${plainNumber(packV / cells)} V a cell with ${cells} cells. ` +
  `${fewer} full cells fit better. Check the cell count.`;

/** Puts a headline that rests on a doubtful count of cells under its condition. */
export const ifCellsAreRight = (cells: number, fewer: number, headline: string): string =>
  `If the pack truly has ${cells} cells (it rests like ${fewer} full ones): ` +
  `${headline.charAt(0).toLowerCase()}${headline.slice(1)}`;
