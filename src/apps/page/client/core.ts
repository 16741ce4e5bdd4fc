import type { AnswerTo, Asked, BookPlace, BookServer, Progress, Reply, Work } from "../messages.ts";
import { clientWords } from "./words.ts";

/** Hears how far a piece of work has come. */
export type Tell = (progress: Progress) => void;

/** The running core: each piece of work gets its answer. */
export interface Core {
  /** False when the page itself does the work. */
  readonly isWorker: boolean;
  /** Where the book lives and whether it lasts. */
  readonly place: BookPlace;
  /** Rejects with a CoreError. Bytes handed over with the work are gone from the page. */
  ask<W extends Work>(work: W, tell?: Tell): Promise<AnswerTo<W>>;
}

/** Why a piece of work has no answer: a sentence for the user, or a bug of ours. */
export class CoreError extends Error {
  readonly isExpected: boolean;
  constructor({ fault, isExpected }: Reply) {
    super(fault ?? "no answer");
    this.name = "CoreError";
    this.isExpected = isExpected;
  }
}

/** Milliseconds in which a worker must show that it runs. */
const START_LIMIT_MS = 8000;
/** The same for one that met an error. */
const ERROR_LIMIT_MS = 4000;
/** Work that any worker does at once. */
const SIGN_OF_LIFE: Work = { kind: "aircraft", text: "{}", file: "" };

type Ask = Core["ask"];

/**
 * Starts the core from its text in the page, in a worker or, where none starts, on the page's own thread,
 * and opens its book.
 */
export async function startCore(): Promise<Core> {
  const source = document.getElementById("core")?.textContent ?? "";
  const worker = await startedWorker(source);
  const ask = worker === null ? askPage(source) : askWorker(worker);
  const { place } = await ask({ kind: "openBook", server: serverOfPage() });
  return { isWorker: worker !== null, place, ask: place.where === "browser" ? keeping(ask) : ask };
}

/** Asks the browser to keep its storage when first something is put there: some ask the user then. */
function keeping(ask: Ask): Ask {
  let isAsked = false;
  return (work, tell) => {
    const isKept = work.kind === "add" || work.kind === "import" || work.kind === "keepAircraft";
    if (isKept && !isAsked) {
      isAsked = true;
      void navigator.storage?.persist?.().catch(() => false);
    }
    return ask(work, tell);
  };
}

/** A page that came from the server has its token behind the #, which no request carries. */
function serverOfPage(): BookServer | null {
  if (location.protocol !== "http:") return null;
  return { origin: location.origin, token: location.hash.slice(1) };
}

function startedWorker(source: string): Promise<Worker | null> {
  return new Promise((resolve) => {
    try {
      const address = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
      const worker = new Worker(address);
      const timer = setTimeout(() => resolve(null), START_LIMIT_MS);
      const settle = (found: Worker | null) => {
        clearTimeout(timer);
        URL.revokeObjectURL(address);
        resolve(found);
      };
      worker.onerror = () => settle(null);
      worker.onmessage = () => settle(worker);
      worker.postMessage({ number: 0, work: SIGN_OF_LIFE } satisfies Asked);
    } catch {
      resolve(null);
    }
  });
}

function askWorker(worker: Worker): Ask {
  const waiting = new Map<number, { readonly end: (reply: Reply) => void; readonly tell: Tell }>();
  let last = 0;
  /** Why nothing is answered any more; null as long as the worker runs. */
  let ended: string | null = null;
  worker.onmessage = ({ data }: MessageEvent<Reply | Progress>) => {
    ended = null;
    const asked = waiting.get(data.number);
    if ("share" in data) asked?.tell(data);
    else {
      waiting.delete(data.number);
      asked?.end(data);
    }
  };
  const giveUp = (numbers: readonly number[], fault: string): void => {
    for (const number of numbers) {
      waiting.get(number)?.end({ number, answer: null, fault, isExpected: true });
      waiting.delete(number);
    }
  };
  // A worker may end with an error, as when its memory is used up, or go on without what it was at.
  worker.onerror = (event) => {
    event.preventDefault();
    const why = event.message || "no reason given";
    const before = [...waiting.keys()];
    const timer = setTimeout(() => {
      ended = clientWords.coreEnded(why);
      giveUp([...waiting.keys()], ended);
    }, ERROR_LIMIT_MS);
    void send(SIGN_OF_LIFE, () => {}).then(() => {
      clearTimeout(timer);
      giveUp(before, clientWords.coreErred(why));
    });
  };
  const send = (work: Work, tell: Tell) =>
    new Promise<Reply>((end) => {
      last += 1;
      if (ended !== null) return end({ number: last, answer: null, fault: ended, isExpected: true });
      waiting.set(last, { end, tell });
      worker.postMessage({ number: last, work } satisfies Asked, "bytes" in work ? [work.bytes] : []);
    });
  return async (work, tell = () => {}) => answerIn(await send(work, tell));
}

function askPage(source: string): Ask {
  const script = document.createElement("script");
  script.textContent = source;
  document.body.append(script);
  const place = globalThis as { tallywattCore?: (asked: Asked, tell: Tell) => Promise<Reply> };
  const run = place.tallywattCore;
  if (run === undefined) throw new Error("the analysis did not start in this browser");
  return async (work, tell = () => {}) => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    return answerIn(await run({ number: 0, work }, tell));
  };
}

function answerIn<W extends Work>(reply: Reply): AnswerTo<W> {
  if (reply.answer === null) throw new CoreError(reply);
  return reply.answer as AnswerTo<W>;
}
