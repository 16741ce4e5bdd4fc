import type { AnswerTo, Asked, Reply, Work } from "../messages.ts";

/** The running core: each piece of work gets its answer. */
export interface Core {
  /** False when the page itself does the work. */
  readonly isWorker: boolean;
  /** Rejects with the text of a fault of ours. */
  ask<W extends Work>(work: W): Promise<AnswerTo<W>>;
}

/** Milliseconds in which a worker must show that it runs. */
const START_LIMIT_MS = 8000;

/** Starts the core from its text in the page: in a worker, or on the page's own thread where none starts. */
export async function startCore(): Promise<Core> {
  const source = document.getElementById("core")?.textContent ?? "";
  const worker = await startedWorker(source);
  return worker === null ? pageCore(source) : workerCore(worker);
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
      const asked: Asked = { number: 0, work: { kind: "aircraft", text: "{}", file: "" } };
      worker.postMessage(asked);
    } catch {
      resolve(null);
    }
  });
}

function workerCore(worker: Worker): Core {
  const waiting = new Map<number, (reply: Reply) => void>();
  let last = 0;
  worker.onmessage = ({ data }: MessageEvent<Reply>) => {
    waiting.get(data.number)?.(data);
    waiting.delete(data.number);
  };
  const ask = (work: Work) =>
    new Promise<Reply>((resolve) => {
      last += 1;
      waiting.set(last, resolve);
      worker.postMessage({ number: last, work } satisfies Asked, work.kind === "check" ? [work.bytes] : []);
    });
  return { isWorker: true, ask: async (work) => answerIn(await ask(work)) };
}

function pageCore(source: string): Core {
  const script = document.createElement("script");
  script.textContent = source;
  document.body.append(script);
  const place = globalThis as { tallywattCore?: (asked: Asked) => Promise<Reply> };
  const run = place.tallywattCore;
  if (run === undefined) throw new Error("the analysis did not start in this browser");
  return {
    isWorker: false,
    ask: async (work) => {
      await new Promise((resolve) => setTimeout(resolve, 0));
      return answerIn(await run({ number: 0, work }));
    },
  };
}

function answerIn<W extends Work>(reply: Reply): AnswerTo<W> {
  if (reply.answer === null) throw new Error(reply.fault ?? "no answer");
  return reply.answer as AnswerTo<W>;
}
