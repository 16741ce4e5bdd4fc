import type { Notice } from "../../base/notices/index.ts";
import type { ColumnChoice, Dialect, ReadOutcome } from "./contract.ts";

/** How a log is read, as plain data for programs. */
export interface ColumnsDescription {
  readonly format: "tallywatt/columns";
  readonly version: 1;
  readonly dialect: Dialect | null;
  readonly headerSignature: string | null;
  readonly columns: readonly ColumnChoice[];
  readonly notices: readonly Notice[];
}

/** The columns of a log with their channels, reasons and forcing options; also of a log that could not be read. */
export function describeColumns(outcome: ReadOutcome): ColumnsDescription {
  const { dialect, headerSignature, columns, notices } = outcome.state === "read" ? outcome.log : outcome;
  return {
    format: "tallywatt/columns",
    version: 1,
    dialect,
    headerSignature,
    columns: [...columns],
    notices,
  };
}
