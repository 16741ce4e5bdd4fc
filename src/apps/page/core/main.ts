import type { Asked, Progress, Reply } from "../messages.ts";
import { startedCore } from "./startedCore.ts";

declare const TALLYWATT_RELEASE: string;

/** Where the core runs: a worker, or the page itself where no worker starts. */
interface Place {
  readonly document?: unknown;
  tallywattCore?: (asked: Asked, tell: (progress: Progress) => void) => Promise<Reply>;
  postMessage(message: Reply | Progress): void;
  onmessage: ((event: { readonly data: Asked }) => void) | null;
}

const place = globalThis as unknown as Place;
const reply = startedCore(TALLYWATT_RELEASE);
if (place.document === undefined) {
  const tell = (progress: Progress): void => place.postMessage(progress);
  place.onmessage = async ({ data }) => post(await reply(data, tell));
} else place.tallywattCore = reply;

/** What cannot leave the worker is a bug of ours, but even then the page must not wait for ever. */
function post(message: Reply): void {
  try {
    place.postMessage(message);
  } catch (error) {
    place.postMessage({ number: message.number, answer: null, fault: String(error), isExpected: false });
  }
}
