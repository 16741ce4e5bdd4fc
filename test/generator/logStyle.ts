import type { LoggedChannel } from "./sensors.ts";

/** Units that a style may write; the value is converted from the channel's own unit. */
export type WrittenUnit =
  | "V"
  | "mV"
  | "A"
  | "mA"
  | "rev/min"
  | "degC"
  | "degF"
  | "K"
  | "%"
  | "share"
  | "m"
  | "ft"
  | "m/s"
  | "km/h"
  | "mAh";

export interface StyleColumn {
  readonly header: string;
  readonly unit: WrittenUnit;
  /** Text of the units row, where the style has one. */
  readonly unitText?: string;
}

export type ClockStyle =
  | "seconds"
  | "milliseconds"
  | "epochMilliseconds"
  | "clockFraction"
  | "wholeSecondClock"
  | "dateAndClock"
  | "isoDateTime"
  | "dottedDateTime";

export type ExtraColumn = "receiverVolts" | "signalStrength" | "event";

/** How a logger writes its file. Headers come from word lists, not from any device. */
export interface LogStyle {
  readonly name: string;
  readonly encoding: "utf-8" | "utf-8-bom" | "utf-16le" | "windows-1252";
  readonly newline: "\n" | "\r\n";
  /** A space stands for columns padded with spaces. */
  readonly delimiter: "," | ";" | "\t" | "|" | " ";
  readonly decimalMark: "." | ",";
  /** Lines before the header. */
  readonly preamble: readonly string[];
  readonly hasUnitsRow: boolean;
  readonly quotesHeader: boolean;
  /** What stands for a missing value. */
  readonly missing: string;
  readonly clock: ClockStyle;
  /** One header, or two for date and clock apart. */
  readonly clockHeaders: readonly string[];
  readonly clockUnitText?: string;
  /** In file order; a channel that the flight does not have is left out. `cellVoltage` stands for all cells. */
  readonly columns: Readonly<Partial<Record<LoggedChannel | "cellVoltage", StyleColumn>>>;
  readonly extras: Readonly<Partial<Record<ExtraColumn, string>>>;
}

/** When a log starts, by the pilot's own clock. */
export interface StartClock {
  /** YYYY-MM-DD */
  readonly date: string;
  /** HH:MM:SS */
  readonly clock: string;
  /** Minutes east of Greenwich. */
  readonly offsetMinutes: number;
}
