import type { ChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";

export type Encoding = "utf-8" | "utf-8-bom" | "utf-16le" | "utf-16be" | "windows-1252";
export type DecimalMark = "point" | "comma";
export type DateOrder = "dmy" | "mdy" | "ymd";

/** Answers a user gave on the command line or page; null or empty where none was given. */
export interface ReadingOptions {
  /** Channel to header text, or "#N" for the 1-based column. */
  readonly columns: ReadonlyMap<ChannelName, string>;
  /** Channel to unit as a user types it ("mV", "F", "ms"). */
  readonly units: ReadonlyMap<ChannelName, string>;
  /** Rows per second, for a log without a usable clock. */
  readonly rateHz: number | null;
  readonly decimalMark: DecimalMark | null;
  /** One character; a tab as "\t"; a space for runs of spaces. */
  readonly delimiter: string | null;
  readonly dateOrder: DateOrder | null;
  /** Cells in series: tells volts of the pack from volts of a cell. */
  readonly cells: number | null;
  /** Pole pairs: turns an electrical speed into shaft speed. */
  readonly polePairs: number | null;
  /** Capacity of the packs, mAh, where known: tells a time in seconds from one in tenths. */
  readonly capacityMah?: number | null;
}

/** One remembered answer of the aircraft file, applied when the header signature is the same. */
export interface RememberedReading {
  readonly headerSignature: string;
  readonly columns: Readonly<Partial<Record<ChannelName, string>>>;
  readonly units: Readonly<Partial<Record<ChannelName, string>>>;
  readonly rateHz: number | null;
  readonly decimalMark: DecimalMark | null;
  readonly dateOrder: DateOrder | null;
}

export interface Dialect {
  readonly encoding: Encoding;
  /** "," ";" "\t" "|" or " " for runs of spaces. */
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  /** 1-based file line of the header. */
  readonly headerLine: number;
}

/** How one column of the file was read. `channel` null: left alone, `why` says the reason. */
export interface ColumnChoice {
  readonly channel: ChannelName | null;
  /** As in the file, trimmed. */
  readonly header: string;
  /** 1-based. */
  readonly column: number;
  /** Unit found in the log ("mV", "degF", "ms"); null when the column is left alone. */
  readonly unit: string | null;
  readonly why: string;
  /** Ready-made options that would force this choice or the likely other ones. */
  readonly options: readonly string[];
}

/** How the clock of the log counts. */
export interface ClockFacts {
  /** `none`: rows were spaced by --rate. */
  readonly kind: "elapsed" | "epoch" | "timeOfDay" | "dateTime" | "none";
  /** Seconds after which this clock starts again from zero (a day, a 32-bit counter); null if never. */
  readonly wrapS: number | null;
  /** Smallest step that the written time can show, seconds (1 for whole-second clocks). */
  readonly resolutionS: number;
  /** The clock of a row as written in the log, or null when it shows only elapsed time. */
  readonly textOfRow: (row: number) => string | null;
}

/** Rows and columns of one log, in fixed units, nothing repaired yet. Row arrays all have `rows` entries. */
export interface ReadLog {
  readonly dialect: Dialect;
  readonly headerSignature: string;
  readonly columns: readonly ColumnChoice[];
  /** Data lines under a header; includes lines left out for a wrong cell count. */
  readonly dataLines: number;
  /** Rows kept. */
  readonly rows: number;
  /** Seconds as the clock says, first usable row near 0; may step back, wrap, repeat; NaN where unreadable. */
  readonly timeS: Float64Array;
  readonly clock: ClockFacts;
  /** One array per channel found (time excluded), in the channel's fixed unit, NaN where missing. */
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  /** 1-based file line of a row. */
  readonly lineOfRow: (row: number) => number;
  readonly notices: readonly Notice[];
}

/** A log that cannot be computed: a choice is needed (`question`) or the input is unusable (`refusal`). */
export interface NotRead {
  readonly state: "question" | "refusal";
  readonly dialect: Dialect | null;
  readonly headerSignature: string | null;
  readonly columns: readonly ColumnChoice[];
  readonly dataLines: number;
  /** At least one of the state's severity. */
  readonly notices: readonly Notice[];
  /** First lines as text cells, for a preview where the question is asked. */
  readonly preview: readonly (readonly string[])[];
}

export type ReadOutcome = { readonly state: "read"; readonly log: ReadLog } | NotRead;
