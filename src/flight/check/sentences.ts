import { plainNumber } from "../../base/quantity/index.ts";

export const fewerFullCells = (packV: number, cells: number, fewer: number): string =>
  `The pack rests at ${plainNumber(packV)} V: ${plainNumber(packV / cells)} V a cell with ${cells} cells. ` +
  `${fewer} full cells fit better. Check the cell count.`;
