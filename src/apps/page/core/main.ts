import type { Answer, Asked, Reply, Work } from "../messages.ts";
import { checkWork } from "./checkWork.ts";
import { takeAircraft } from "./readAircraft.ts";

declare const TALLYWATT_RELEASE: string;

/** Where the core runs: a worker, or the page itself where no worker starts. */
interface Place {
  readonly document?: unknown;
  tallywattCore?: (asked: Asked) => Promise<Reply>;
  postMessage(reply: Reply): void;
  onmessage: ((event: { readonly data: Asked }) => void) | null;
}

async function answerOf(work: Work): Promise<Answer> {
  if (work.kind === "aircraft") return takeAircraft(work);
  return checkWork(work, await sha256Of(work.bytes), TALLYWATT_RELEASE);
}

async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function reply({ number, work }: Asked): Promise<Reply> {
  try {
    return { number, answer: await answerOf(work), fault: null };
  } catch (error) {
    return { number, answer: null, fault: error instanceof Error ? error.message : String(error) };
  }
}

const place = globalThis as unknown as Place;
if (place.document === undefined) {
  place.onmessage = async ({ data }) => place.postMessage(await reply(data));
} else place.tallywattCore = reply;
