import { cellsOfLine, isBlank } from "./cells.ts";
import type { Decoding } from "./encoding.ts";
import { HEAD_CHARACTERS, HEAD_LINES, PREVIEW_ROWS, QUOTED_CHARACTERS } from "./limits.ts";
import { lineBlocks } from "./lines.ts";
import type { LogBytes } from "./logBytes.ts";

const PREVIEW_COLUMNS = 30;
/** Header and first rows, however long. */
const FEWEST_LINES = 4;

export interface Head {
  readonly lines: readonly string[];
  readonly overlongLine: number | null;
}

/** The first lines of a file; a last line that is cut off is left away when there are others. */
export function headLinesOf(bytes: LogBytes, decoding: Decoding): Head {
  const lines: string[] = [];
  let characters = 0;
  for (const block of lineBlocks(bytes, decoding)) {
    if (block.overlongLine !== null) return { lines, overlongLine: block.overlongLine };
    const complete =
      block.isTerminated || lines.length + block.lines.length < 2 ? block.lines : block.lines.slice(0, -1);
    for (const line of complete) {
      if (lines.length >= HEAD_LINES || (characters > HEAD_CHARACTERS && lines.length >= FEWEST_LINES)) break;
      lines.push(line);
      characters += line.length;
    }
    if (lines.length >= HEAD_LINES || characters > HEAD_CHARACTERS) break;
  }
  return { lines, overlongLine: null };
}

/** First lines as cells, shortened, for showing beside a question. */
export function previewOf(head: readonly string[], delimiter: string): readonly (readonly string[])[] {
  return head
    .filter((line) => !isBlank(line))
    .slice(0, PREVIEW_ROWS)
    .map((line) =>
      cellsOfLine(line, delimiter)
        .slice(0, PREVIEW_COLUMNS)
        .map((cell) => cell.slice(0, QUOTED_CHARACTERS)),
    );
}
