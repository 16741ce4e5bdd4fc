import type { Io } from "./io.ts";
import { printable } from "./printable.ts";
import { asCalled } from "./programName.ts";

/** The two ways out: data to standard output, talk to standard error. Nothing unprintable passes. */
export interface Talk {
  /** One or more lines of the result. */
  data(text: string): void;
  /** One or more lines about it. */
  say(text: string): void;
  /** The same in bold where the terminal shows it; the words alone carry the meaning. */
  boldData(text: string): void;
}

export function talkThrough(io: Io, isPlain: boolean): Talk {
  const isBold = io.outIsTerminal && !isPlain && !io.env.NO_COLOR && io.env.TERM !== "dumb";
  const shown = (text: string): string => printable(asCalled(text, io.program ?? "tallywatt"));
  const data = (text: string): void => io.out.write(`${shown(text)}\n`);
  return {
    data,
    say: (text) => io.err.write(`${shown(text)}\n`),
    boldData: (text) => (isBold ? io.out.write(`\u001B[1m${shown(text)}\u001B[22m\n`) : data(text)),
  };
}
