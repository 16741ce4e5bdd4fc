import type { ExamplePart } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { plainNumber } from "../../base/quantity/index.ts";
import { uncapital } from "../../base/words/index.ts";

export const fewerCellsFit = (packV: number, cells: number, fewer: number): string =>
  `The pack rests at ${plainNumber(packV)} V: ${plainNumber(packV / cells)} V a cell with ${cells} cells. ` +
  `${fewer} full cells fit better. Check the cell count.`;

/** Puts a headline that rests on a doubtful count of cells under its condition. */
export const ifCellsAreRight = (cells: number, fewer: number, headline: string): string =>
  `If the pack truly has ${cells} cells (it rests like ${fewer} full ones): ${uncapital(headline)}`;

export const altitudeUnitAsked = (header: string): string =>
  `Column ${JSON.stringify(header)} names no unit and is read in m: by it altitude changes during full throttle on the ground. ` +
  "Nothing static is told. Say which unit it has.";

export const byExampleNumbers = (parts: readonly ExamplePart[], headline: string): string =>
  `By the example numbers still in the aircraft file (${parts.join(", ")}): ${uncapital(headline)}`;

export const exampleNotice = (parts: readonly ExamplePart[]): Notice => ({
  code: "example-numbers",
  severity: "warning",
  text:
    `The aircraft file still holds the example's numbers for ${parts.join(", ")}. ` +
    "Put in your own, or delete the lines you do not know: then they are not judged.",
});
