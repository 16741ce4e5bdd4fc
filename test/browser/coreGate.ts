import type { BrowserContext, Page } from "playwright-core";
import type { Reply } from "../../src/apps/page/messages.ts";
import type { FlightCheck } from "../../src/flight/check/index.ts";

/** Runs in the page: what the test does with the work that the page asks of its core, by kind. */
interface Gate {
  readonly held: Set<string>;
  readonly failing: Set<string>;
  readonly waiting: (() => void)[];
  readonly workers: Worker[];
  /** The last work of each kind. */
  readonly asked: Record<string, object>;
  /** How often each kind was asked for. */
  readonly counts: Record<string, number>;
  /** What the core answered about each log, by its file name. */
  readonly checks: Record<string, FlightCheck>;
}

declare global {
  var coreGate: Gate;
}

/** Puts a gate between every page of a context and its core; open until a test closes it. */
export async function addGate(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const gate: Gate = {
      held: new Set(),
      failing: new Set(),
      waiting: [],
      workers: [],
      asked: {},
      counts: {},
      checks: {},
    };
    globalThis.coreGate = gate;
    globalThis.Worker = class extends Worker {
      constructor(address: string | URL) {
        super(address);
        gate.workers.push(this);
        this.addEventListener("message", ({ data }: MessageEvent<Partial<Reply>>) => {
          if (data.answer?.kind === "check") gate.checks[data.answer.check.log.file] = data.answer.check;
        });
      }
      override postMessage(data: unknown, more?: Transferable[] | StructuredSerializeOptions): void {
        const { number, work } = data as {
          readonly number: number;
          readonly work: { readonly kind: string };
        };
        gate.asked[work.kind] = { ...work };
        gate.counts[work.kind] = (gate.counts[work.kind] ?? 0) + 1;
        const send = () => super.postMessage(data, Array.isArray(more) ? more : []);
        if (gate.failing.has(work.kind)) {
          const reply = { number, answer: null, fault: `no ${work.kind} today`, isExpected: false };
          setTimeout(() => this.dispatchEvent(new MessageEvent("message", { data: reply })), 0);
        } else if (gate.held.has(work.kind)) gate.waiting.push(send);
        else send();
      }
    };
  });
}

/** Holds back work of a kind until it is released. */
export function hold(page: Page, kind: string): Promise<unknown> {
  return page.evaluate((one) => coreGate.held.add(one), kind);
}

/** How much work is held back. */
export function heldCount(page: Page): Promise<number> {
  return page.evaluate(() => coreGate.waiting.length);
}

/** The last work of a kind that the page asked for. */
export function lastAsked(page: Page, kind: string): Promise<unknown> {
  return page.evaluate((one) => coreGate.asked[one], kind);
}

/** How often the page asked for work of a kind. */
export function askedCount(page: Page, kind: string): Promise<number> {
  return page.evaluate((one) => coreGate.counts[one] ?? 0, kind);
}

/** What the core answered about a log that the page read. */
export async function checkOf(page: Page, file: string): Promise<FlightCheck> {
  const check = await page.evaluate((name) => coreGate.checks[name], file);
  if (check === undefined) throw new Error(`${file} was not read`);
  return check;
}

/** Lets through what was held, in the order asked or the last first. */
export function release(page: Page, order: "first first" | "last first" = "first first"): Promise<void> {
  return page.evaluate((isReversed) => {
    coreGate.held.clear();
    const waiting = coreGate.waiting.splice(0);
    for (const send of isReversed ? waiting.reverse() : waiting) send();
  }, order === "last first");
}

/** Work of these kinds fails from now on, all other goes through. */
export function fail(page: Page, ...kinds: readonly string[]): Promise<void> {
  return page.evaluate((all) => {
    coreGate.failing.clear();
    for (const one of all) coreGate.failing.add(one);
  }, kinds);
}

/** The core ends, as a browser that runs out of memory ends it. */
export function endCore(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const worker of coreGate.workers) {
      worker.terminate();
      worker.dispatchEvent(new ErrorEvent("error", { message: "out of memory", cancelable: true }));
    }
  });
}

/** The core meets an error that nothing catches, and goes on. */
export function disturbCore(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const worker of coreGate.workers)
      worker.dispatchEvent(new ErrorEvent("error", { message: "a stray error", cancelable: true }));
  });
}
