import type { Io } from "../io.ts";
import { logbookSentences } from "./sentences.ts";

/** Without a terminal a line is written for every so many logs. */
const LOGS_A_LINE = 25;

/** Says on standard error how far a long command has come: one line that is rewritten, on a terminal. */
export interface Progress {
  /** One more log is done. */
  step(): void;
  end(): void;
}

export function progressOf(total: number, io: Io): Progress {
  let done = 0;
  if (total < 2) return { step: () => {}, end: () => {} };
  return {
    step: () => {
      done += 1;
      const text = logbookSentences.progress(done, total);
      if (io.errIsTerminal) io.err.write(`\r${text}`);
      else if (done % LOGS_A_LINE === 0) io.err.write(`${text}\n`);
    },
    end: () => {
      if (io.errIsTerminal && done > 0) io.err.write("\r\u001B[K");
    },
  };
}
