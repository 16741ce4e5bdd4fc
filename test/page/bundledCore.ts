import { createContext, Script } from "node:vm";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import type { AnswerTo, Asked, Reply, Work } from "../../src/apps/page/messages.ts";

type Run = (asked: Asked, tell: () => void) => Promise<Reply>;
export type Ask = <W extends Work>(work: W) => Promise<AnswerTo<W>>;

/**
 * The core as the page carries it, in the engine that the command runs in, started as on a page whose browser has no
 * worker and no storage. Each start has a book of its own.
 */
export async function bundledCore(): Promise<() => Ask> {
  const page = (await pageText()) as string;
  const source = /<script id="core" type="text\/plain">([\s\S]*?)<\/script>/.exec(page)?.[1] ?? "";
  const script = new Script(source);
  return () => {
    const place = {
      document: {},
      crypto,
      TextDecoder,
      TextEncoder,
      atob,
      btoa,
      setTimeout,
      tallywattCore: null,
    };
    script.runInContext(createContext(place));
    const run = place.tallywattCore as Run | null;
    if (run === null) throw new Error("the page's core did not start");
    return async <W extends Work>(work: W) => {
      const { answer, fault } = await run({ number: 1, work }, () => {});
      if (answer === null) throw new Error(fault ?? "");
      // What cannot be cloned cannot leave a worker.
      return structuredClone(answer) as AnswerTo<W>;
    };
  };
}
