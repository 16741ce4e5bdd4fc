import type { Notice } from "../../base/notices/index.ts";
import type { FlightCheck } from "../../flight/check/index.ts";
import type { ColumnChoice, DateOrder, DecimalMark } from "../../log/reading/index.ts";

/** What the user answered about one log; plain data, since it crosses to the worker and into storage. */
export interface Answers {
  /** Channel to "#N", the 1-based column. */
  readonly columns: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  readonly rateHz: number | null;
  readonly decimalMark: DecimalMark | null;
  readonly delimiter: string | null;
  readonly dateOrder: DateOrder | null;
  readonly cells: number | null;
  readonly polePairs: number | null;
}

export const NO_ANSWERS: Answers = {
  columns: {},
  units: {},
  rateHz: null,
  decimalMark: null,
  delimiter: null,
  dateOrder: null,
  cells: null,
  polePairs: null,
};

/** One log to check. */
export interface CheckWork {
  readonly kind: "check";
  readonly file: string;
  readonly bytes: ArrayBuffer;
  /** Text of the aircraft file, or null without one. */
  readonly aircraft: string | null;
  /** Answers given for this log now; null looks the remembered ones up by header. */
  readonly answers: Answers | null;
  /** Header signature to answers given earlier on this page. */
  readonly remembered: Readonly<Record<string, Answers>>;
}

/** What one log says, ready to be shown. */
export interface CheckAnswer {
  readonly kind: "check";
  readonly check: FlightCheck;
  /** The report as one HTML text; it enters the page only through a parser that runs nothing. */
  readonly report: string;
  readonly columns: readonly ColumnChoice[];
  /** First lines as cells; empty for a log that was read. */
  readonly preview: readonly (readonly string[])[];
  /** True when answers of an earlier log with this header were used. */
  readonly isRemembered: boolean;
}

export interface AircraftWork {
  readonly kind: "aircraft";
  readonly text: string;
  readonly file: string;
}

export interface AircraftAnswer {
  readonly kind: "aircraft";
  /** Null when the file cannot be used; the notices say why. */
  readonly name: string | null;
  readonly notices: readonly Notice[];
}

export type Work = CheckWork | AircraftWork;
export type Answer = CheckAnswer | AircraftAnswer;
export type AnswerTo<W extends Work> = Extract<Answer, { readonly kind: W["kind"] }>;

/** A piece of work with its number, and the reply that carries the same number. */
export interface Asked {
  readonly number: number;
  readonly work: Work;
}
export interface Reply {
  readonly number: number;
  readonly answer: Answer | null;
  /** Text of a fault of ours, or null. */
  readonly fault: string | null;
}
