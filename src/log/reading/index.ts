export { NO_READING_OPTIONS } from "./answers.ts";
export { isUnitUnstated } from "./channelUnit.ts";
export type {
  ClockFacts,
  ColumnChoice,
  DateOrder,
  DecimalMark,
  Dialect,
  Encoding,
  NotRead,
  ReadingOptions,
  ReadLog,
  ReadOutcome,
  RememberedReading,
} from "./contract.ts";
export { type ColumnsDescription, describeColumns } from "./describeColumns.ts";
export { MOST_BYTES } from "./limits.ts";
export type { LogBytes } from "./logBytes.ts";
export { readLog } from "./readLog.ts";
export { areBlankCells } from "./sentences.ts";
