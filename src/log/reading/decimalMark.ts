const BOTH_MARKS = /^[+\-\u2212]?\d{1,3}(?:([.,])\d{3})+([.,])\d*$/;
const ONE_MARK = /^[+\-\u2212]?(\d*)([.,])(\d*)(?:[eE][+-]?\d+)?$/;

export type MarkEvidence = "." | "," | "ambiguous" | null;

/** Which decimal mark a cell proves; "1.234" could be either, so it proves nothing. */
export function markEvidence(cell: string): MarkEvidence {
  if (!cell.includes(".") && !cell.includes(",")) return null;
  const grouped = BOTH_MARKS.exec(cell);
  if (grouped !== null && grouped[1] !== grouped[2]) return grouped[2] as "." | ",";
  const single = ONE_MARK.exec(cell);
  if (single === null || (single[1] === "" && single[3] === "")) return null;
  const [, before, mark, after] = single;
  const couldBeGroup =
    after!.length === 3 && before!.length >= 1 && before!.length <= 3 && !/^0/.test(before!);
  return couldBeGroup ? "ambiguous" : (mark as "." | ",");
}

export interface MarkChoice {
  readonly mark: "." | ",";
  /** False when no cell looked at proves the mark. */
  readonly isProven: boolean;
}

/** The decimal mark of the rows looked at (cells as text). */
export function findDecimalMark(rows: readonly (readonly string[])[]): MarkChoice {
  let points = 0;
  let commas = 0;
  for (const row of rows) {
    for (const cell of row) {
      const evidence = markEvidence(cell);
      if (evidence === ".") points++;
      if (evidence === ",") commas++;
    }
  }
  if (points + commas > 0) return { mark: commas > points ? "," : ".", isProven: true };
  return { mark: markOfGroups(rows), isProven: false };
}

/**
 * Only cells like "1.234": a column in which every cell has the mark writes three decimals;
 * a column with unmarked cells beside them writes digit groups with the other mark.
 */
function markOfGroups(rows: readonly (readonly string[])[]): "." | "," {
  const width = Math.max(0, ...rows.map((row) => row.length));
  for (let column = 0; column < width; column++) {
    const cells = rows.map((row) => row[column] ?? "").filter((cell) => /^[+-]?[\d.,]+$/.test(cell));
    const marked = cells.filter((cell) => /[.,]/.test(cell));
    if (marked.length === 0) continue;
    const mark = marked[0]!.includes(",") ? "," : ".";
    if (marked.length === cells.length) return mark;
    return mark === "," ? "." : ",";
  }
  return ".";
}
