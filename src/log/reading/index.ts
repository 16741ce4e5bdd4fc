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
