import type { Random } from "../generator/random.ts";
import { encoded, WRITTEN_ENCODINGS } from "./encodings.ts";
import { exactSums } from "./exactSums.ts";
import { flightNumbers } from "./flightNumbers.ts";
import { type Mark, plainTable, textOf } from "./logText.ts";
import { readSums } from "./readSums.ts";

export const DELIMITERS = [",", ";", "\t", "|", "  "] as const;
export const MARKS: readonly Mark[] = [".", ","];
export const NEWLINES = ["\n", "\r\n", "\r"] as const;

export interface WrittenDialect {
  readonly delimiter: (typeof DELIMITERS)[number];
  readonly mark: Mark;
  readonly newline: (typeof NEWLINES)[number];
  readonly encoding: (typeof WRITTEN_ENCODINGS)[number];
}

/** Every delimiter x decimal mark x newline x encoding. */
export const DIALECTS: readonly WrittenDialect[] = DELIMITERS.flatMap((delimiter) =>
  MARKS.flatMap((mark) =>
    NEWLINES.flatMap((newline) =>
      WRITTEN_ENCODINGS.map((encoding) => ({ delimiter, mark, newline, encoding })),
    ),
  ),
);

/** Null when the log in this dialect gives its sums; a decimal comma between commas is a question instead. */
export function dialectTrial(dialect: WrittenDialect, random: Random): string | null {
  const { delimiter, mark, newline, encoding } = dialect;
  const rows = flightNumbers(random);
  const bytes = encoded(textOf(plainTable(rows, mark), delimiter, newline), encoding);
  const { outcome, sums } = readSums(bytes);
  const name = JSON.stringify(dialect);
  if (delimiter === "," && mark === ",")
    return outcome.state === "question" ? null : `${name}: ${outcome.state}`;
  if (sums === null) return `${name}: ${outcome.state}`;
  const expected = exactSums(rows);
  const isEqual =
    Math.abs(sums.chargeMah / expected.chargeMah - 1) <= 1e-9 &&
    Math.abs(sums.energyWh / expected.energyWh - 1) <= 1e-9;
  return isEqual ? null : `${name}: ${sums.chargeMah} mAh, not ${expected.chargeMah}`;
}
