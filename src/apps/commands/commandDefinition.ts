import type { ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import type { Talk } from "./talk.ts";

export interface OptionDefinition {
  /** "--ambient <C>", "--json", "--report [FILE]" (a value only with =). */
  readonly flags: string;
  readonly help: string;
}

/** One command, in a file of its own that is loaded when it is called. */
export interface CommandDefinition {
  /** "<LOG...>", "[DIR]"; empty for none. */
  readonly operands: string;
  /** What it does, one sentence. */
  readonly about: string;
  /** Command lines that a test runs, the plainest first. */
  readonly examples: readonly Example[];
  readonly options: readonly OptionDefinition[];
  /** More lines for the end of the help. */
  readonly notes?: readonly string[];
  readonly run: (call: Call, io: Io, talk: Talk) => Promise<ExitCode>;
}

export interface Example {
  readonly line: string;
  readonly about: string;
}

/** What the user typed for one command. Option names are written without dashes: "start-pct". */
export interface Call {
  readonly name: string;
  readonly operands: readonly string[];
  /** Last value given, or null. */
  text(option: string): string | null;
  /** Every value given, in order. */
  texts(option: string): readonly string[];
  has(option: string): boolean;
  /** The options given, as words to repeat in a suggested command line. */
  readonly optionWords: readonly string[];
}
