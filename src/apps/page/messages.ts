import type { AircraftKey, AircraftValues } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { DisplayUnits } from "../../base/quantity/index.ts";
import type { FlightCheck } from "../../flight/check/index.ts";
import type { PlanResult, SwapResult } from "../../flight/judgement/index.ts";
import type { Change, LoggedFlight, PlanConditions } from "../../flight/prediction/index.ts";
import type { ColumnChoice, DateOrder, DecimalMark } from "../../log/reading/index.ts";
import type { AddedLog, GivenChanges, GivenFacts, ListResult, TakenIn } from "../../season/logbook/index.ts";
import type { TimerResult } from "../../season/timer/index.ts";
import type { TrendResult } from "../../season/trends/index.ts";

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
  /** As `check --json` prints it. */
  readonly check: FlightCheck;
  /** The report as one HTML text; it enters the page only through a parser that runs nothing. */
  readonly report: string;
  readonly columns: readonly ColumnChoice[];
  /** First lines as cells; empty for a log that was read. */
  readonly preview: readonly (readonly string[])[];
  /** True when answers of an earlier log with this header were used. */
  readonly isRemembered: boolean;
  /** The aircraft file with this log's answers kept in its readings; null when there is nothing to keep. */
  readonly aircraftToKeep: string | null;
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
  /** What the file gives, by key path ("pack.cells"); empty for a file that cannot be used. */
  readonly values: AircraftValues;
  /** All that the measures of a log are made from: where it is the same, so are they. Empty like the values. */
  readonly measuring: string;
}

/** Changes keys of an aircraft file; null takes a key out. Comments and the rest of the text stay. */
export interface EditAircraftWork {
  readonly kind: "editAircraft";
  readonly text: string;
  readonly file: string;
  readonly changes: Readonly<Record<string, number | string | null>>;
}

/** The new text with what it says; where a value is out of its range the notices say so. */
export interface EditAircraftAnswer extends Omit<AircraftAnswer, "kind"> {
  readonly kind: "editAircraft";
  readonly text: string;
}

/** Every key of the aircraft file for a form, and the text that a new one starts from. */
export interface AircraftKeysWork {
  readonly kind: "aircraftKeys";
}
export interface AircraftKeysAnswer {
  readonly kind: "aircraftKeys";
  readonly keys: readonly AircraftKey[];
  readonly starter: string;
}

/**
 * Whose flights: a text of an aircraft file, the name of an aircraft of the book, or null for the only one of
 * the book.
 */
export type WantedAircraft =
  | { readonly text: string; readonly file: string }
  | { readonly name: string }
  | null;

/** A result as markup too; it enters the page only through a parser that runs nothing. Empty where there is none. */
export interface Shown {
  readonly view: string;
}

/** What one log that was read on the page says of the parts, held against the aircraft as it is. */
export interface MeasuredLog {
  readonly sha256: string;
  /** Name of the log. */
  readonly file: string;
  readonly flights: readonly Pick<LoggedFlight, "kind" | "complete" | "measures" | "isChargeDoubtful">[];
}

/** What the parts are known from beside the aircraft file. */
export interface KnownFrom {
  /** The book's flights of that aircraft. */
  readonly withBook: boolean;
  /** Logs read on the page; one that the book holds counts once. */
  readonly logs: readonly MeasuredLog[];
}

/** Flights and bench runs that a prediction rests on. */
export interface RestsOn {
  readonly inBook: number;
  readonly inLogs: number;
  /** SHA-256 of the logs that these flights are in. */
  readonly logs: readonly string[];
  /** Those that do not count. */
  readonly leftOut: number;
}

/** The plan of an aircraft, as `plan --json` prints it from the book alone, or with --log from the logs alone. */
export interface PlanWork extends KnownFrom {
  readonly kind: "plan";
  readonly aircraft: WantedAircraft;
  readonly conditions: Pick<PlanConditions, "ambientC" | "elevationM">;
  /** Units of the view; metric without. */
  readonly units?: DisplayUnits;
}
export interface PlanAnswer extends Stoppable<PlanResult>, Shown {
  readonly kind: "plan";
  readonly flights: RestsOn;
}

/** Before and after a change, as `swap --json` prints it from the book alone, or with --log from the logs alone. */
export interface SwapWork extends KnownFrom {
  readonly kind: "swap";
  readonly aircraft: WantedAircraft;
  readonly change: Change;
  /** Of the changed side; null for what stays as it is. The other side has what the aircraft file says. */
  readonly conditions: {
    readonly ambientC: number | null;
    readonly elevationM: number | null;
    readonly reservePct: number | null;
  };
  /** Units of the view; metric without. */
  readonly units?: DisplayUnits;
}
export interface SwapAnswer extends Stoppable<SwapResult>, Shown {
  readonly kind: "swap";
  readonly flights: RestsOn;
}

/** A result, or null with the questions or refusals that stand in its place. */
export interface Stoppable<Result> {
  readonly result: Result | null;
  readonly notices: readonly Notice[];
}

/** Where the server of this page is and what it asks for; null for a page opened from disk. */
export interface BookServer {
  readonly origin: string;
  readonly token: string;
}

/** Opens the book; asked once, before any other work on it. */
export interface OpenBookWork {
  readonly kind: "openBook";
  readonly server: BookServer | null;
}

export interface OpenBookAnswer {
  readonly kind: "openBook";
  readonly place: BookPlace;
}

/** Where the book lives and whether it lasts. */
export interface BookPlace {
  readonly where: "folder" | "browser" | "memory";
  /** The folder as the command names it; null where there is none or where its server cannot be reached. */
  readonly folder: string | null;
  /** True when the book is there after the page was closed. */
  readonly isKept: boolean;
  /** True when the browser promised not to clear it on its own; a folder is never cleared. */
  readonly isPromised: boolean;
  /** All this in sentences, with what will not be kept. */
  readonly text: string;
}

/** The book's aircraft and flights, as `list --json` prints them. */
export interface ListWork {
  readonly kind: "list";
  /** Only flights of this aircraft; null for all. */
  readonly aircraft: string | null;
}
export interface ListAnswer {
  readonly kind: "list";
  readonly list: ListResult;
  /** SHA-256 of the log of each of these flights. */
  readonly logs: readonly string[];
  readonly aircraft: readonly AircraftInBook[];
}
export interface AircraftInBook {
  readonly name: string;
  readonly path: string;
  readonly text: string;
}

/** Adds one log. */
export interface AddWork {
  readonly kind: "add";
  readonly file: string;
  readonly bytes: ArrayBuffer;
  readonly aircraft: WantedAircraft;
  readonly given: GivenFacts;
  readonly answers: Answers | null;
  /** Flights added just before that the put-back covers too. */
  readonly chargedWith: readonly string[];
  /** Adds a flight that looks like one of the book exported again. */
  readonly isAgain: boolean;
  /** Names this drop of logs: what is added under one name is undone together. */
  readonly run: string;
}
export interface AddAnswer extends AddedLog {
  readonly kind: "add";
}

/** One flight as the book keeps it, as `show --json` prints it, with the report of its log. */
export interface ShowWork {
  readonly kind: "show";
  readonly flight: string;
}
export interface ShowAnswer {
  readonly kind: "show";
  /** Null when it is not there or damaged, see `why`. */
  readonly flight: object | null;
  readonly check: FlightCheck | null;
  /** Null where the log cannot be read again, see `why`. */
  readonly report: string | null;
  readonly why: string | null;
}

/** Changes what the pilot said of flights; a fact that is null is taken away, one left out stays. */
export interface EditWork {
  readonly kind: "edit";
  /** With several, a put-back is what one charge put back after all of them. */
  readonly flights: readonly string[];
  readonly changes: GivenChanges;
}
export interface RemoveWork {
  readonly kind: "remove";
  readonly flights: readonly string[];
}
/** Takes the last change back; a second one makes it again. */
export interface UndoWork {
  readonly kind: "undo";
}
/** The flights that were changed, none where nothing was, and all in one sentence. */
export interface ChangeAnswer<Kind extends "edit" | "remove" | "undo"> {
  readonly kind: Kind;
  readonly flights: readonly string[];
  readonly text: string;
}

export interface TimerWork {
  readonly kind: "timer";
  readonly aircraft: WantedAircraft;
  readonly pack: string | null;
  readonly ambientC: number | null;
  /** Null takes the aircraft file's. */
  readonly reservePct: number | null;
  readonly startPct: number | null;
}
export interface TimerAnswer extends Stoppable<TimerResult>, Shown {
  readonly kind: "timer";
}

export interface TrendWork {
  readonly kind: "trend";
  readonly aircraft: WantedAircraft;
}
export interface TrendAnswer extends Stoppable<TrendResult>, Shown {
  readonly kind: "trend";
}

/** The season report as one HTML text. */
export interface SeasonWork {
  readonly kind: "season";
  readonly aircraft: WantedAircraft;
}
export interface SeasonAnswer extends Stoppable<string> {
  readonly kind: "season";
}

/** Keeps an aircraft file in the book: in place of the one of that name, else as a new one. */
export interface KeepAircraftWork {
  readonly kind: "keepAircraft";
  readonly text: string;
  readonly file: string;
}
export interface KeepAircraftAnswer extends Stoppable<AircraftInBook> {
  readonly kind: "keepAircraft";
}

/** The whole book as one file, as `export NAME.book.json` writes it. */
export interface ExportWork {
  readonly kind: "export";
}
export interface ExportAnswer {
  readonly kind: "export";
  readonly file: string;
  readonly text: string;
  readonly flights: number;
}

/** Takes a whole book in from one file. */
export interface ImportWork {
  readonly kind: "import";
  readonly file: string;
  readonly bytes: ArrayBuffer;
}
export interface ImportAnswer extends Stoppable<TakenIn> {
  readonly kind: "import";
}

export type Work =
  | CheckWork
  | AircraftWork
  | EditAircraftWork
  | AircraftKeysWork
  | PlanWork
  | SwapWork
  | OpenBookWork
  | ListWork
  | AddWork
  | ShowWork
  | EditWork
  | RemoveWork
  | UndoWork
  | TimerWork
  | TrendWork
  | SeasonWork
  | KeepAircraftWork
  | ExportWork
  | ImportWork;
export type Answer =
  | CheckAnswer
  | AircraftAnswer
  | EditAircraftAnswer
  | AircraftKeysAnswer
  | PlanAnswer
  | SwapAnswer
  | OpenBookAnswer
  | ListAnswer
  | AddAnswer
  | ShowAnswer
  | ChangeAnswer<"edit">
  | ChangeAnswer<"remove">
  | ChangeAnswer<"undo">
  | TimerAnswer
  | TrendAnswer
  | SeasonAnswer
  | KeepAircraftAnswer
  | ExportAnswer
  | ImportAnswer;
export type AnswerTo<W extends Work> = Extract<Answer, { readonly kind: W["kind"] }>;

/** A piece of work with its number, and the reply that carries the same number. */
export interface Asked {
  readonly number: number;
  readonly work: Work;
}
export interface Reply {
  readonly number: number;
  readonly answer: Answer | null;
  /** Why there is no answer, or null. */
  readonly fault: string | null;
  /** True when `fault` is a sentence for the user; false when it is a bug of ours. */
  readonly isExpected: boolean;
}

/** How far a piece of work has come; any number of these may precede its reply. */
export interface Progress {
  readonly number: number;
  /** From 0 to 1. */
  readonly share: number;
  readonly words: string;
}
