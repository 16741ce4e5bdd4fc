import type { BrowserContext, Page } from "playwright-core";
import type { AnswerTo, Reply, Work } from "../../src/apps/page/messages.ts";

/** A piece of work as it can cross into a browser: bytes as base 64. */
interface Sendable {
  readonly kind: string;
  readonly bytes?: string;
}

/** Opens a page that tells whatever must not happen: faults, refusals of its policy, requests to others. */
export async function openPage(
  context: BrowserContext,
  address: string,
): Promise<{ readonly page: Page; readonly problems: string[] }> {
  const page = await context.newPage();
  const problems: string[] = [];
  const { origin, href } = new URL(address);
  page.on("pageerror", (error) => problems.push(`error: ${error.message}`));
  page.on("console", (message) => problems.push(`console: ${message.text()}`));
  page.on("request", (request) => {
    const url = request.url();
    const isOwn =
      url.startsWith("blob:") || url === href || (origin !== "null" && new URL(url).origin === origin);
    if (!isOwn) problems.push(`request: ${url}`);
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.log(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  await page.goto(address);
  await page.getByText("Ready for a log.").waitFor();
  return { page, problems };
}

/** Asks a core of its own on the page, a worker where the browser has one, and opens the page's book first. */
export async function ask<W extends Work>(page: Pick<Page, "evaluate">, work: W): Promise<AnswerTo<W>> {
  const sent = "bytes" in work ? { ...work, bytes: Buffer.from(work.bytes).toString("base64") } : work;
  const reply = await page.evaluate(replyIn, sent as Sendable);
  if (reply.answer === null) throw new Error(`${work.kind}: ${reply.fault}`);
  return reply.answer as AnswerTo<W>;
}

/** Runs in the browser. */
async function replyIn(work: Sendable): Promise<Reply> {
  type Run = (asked: unknown, tell: () => void) => Promise<Reply>;
  const place = globalThis as unknown as { testAsk?: (work: unknown) => Promise<Reply>; tallywattCore?: Run };
  const start = (): ((work: unknown) => Promise<Reply>) => {
    const run = place.tallywattCore;
    if (run !== undefined) return (own) => run({ number: 1, work: own }, () => {});
    const source = document.getElementById("core")?.textContent ?? "";
    const worker = new Worker(URL.createObjectURL(new Blob([source], { type: "text/javascript" })));
    let number = 0;
    return (own) =>
      new Promise((resolve) => {
        number += 1;
        const mine = number;
        worker.addEventListener("message", ({ data }) => {
          if (data.number === mine && "answer" in data) resolve(data);
        });
        worker.postMessage({ number: mine, work: own });
      });
  };
  if (place.testAsk === undefined) {
    place.testAsk = start();
    const { origin, hash, protocol } = location;
    const server = protocol === "http:" ? { origin, token: hash.slice(1) } : null;
    await place.testAsk({ kind: "openBook", server });
  }
  const bytes =
    work.bytes === undefined
      ? {}
      : { bytes: Uint8Array.from(atob(work.bytes), (sign) => sign.charCodeAt(0)).buffer };
  return place.testAsk({ ...work, ...bytes });
}
