import type { Io } from "../io.ts";
import type { Talk } from "../talk.ts";
import { logbookSentences } from "./sentences.ts";

/** Without a terminal a line is written for every so many logs. */
const LOGS_A_LINE = 25;

/** Says on standard error how far a long command has come: one line that is rewritten, on a terminal. */
export interface Progress {
  /** One more log is done. */
  step(): void;
  end(): void;
  /** For what is told meanwhile: the line gives way to it. */
  readonly talk: Talk;
}

const CLEAR = "\r\u001B[K";

export function progressOf(total: number, io: Io, talk: Talk): Progress {
  if (total < 2) return { step: () => {}, end: () => {}, talk };
  return io.errIsTerminal ? rewrittenLine(total, io, talk) : lineEveryFew(total, io, talk);
}

function rewrittenLine(total: number, { err }: Io, talk: Talk): Progress {
  let done = 0;
  const draw = (): void => {
    if (done > 0) err.write(`${CLEAR}${logbookSentences.progress(done, total)}`);
  };
  const over = (tell: (text: string) => void) => (text: string) => {
    if (done > 0) err.write(CLEAR);
    tell(text);
    draw();
  };
  return {
    step: () => {
      done += 1;
      draw();
    },
    end: () => {
      if (done > 0) err.write(CLEAR);
    },
    talk: { data: over(talk.data), say: over(talk.say), boldData: over(talk.boldData) },
  };
}

function lineEveryFew(total: number, { err }: Io, talk: Talk): Progress {
  let done = 0;
  return {
    step: () => {
      done += 1;
      if (done % LOGS_A_LINE === 0) err.write(`${logbookSentences.progress(done, total)}\n`);
    },
    end: () => {},
    talk,
  };
}
