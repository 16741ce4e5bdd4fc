import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { createContext, runInContext } from "node:vm";
import { afterAll, describe, expect, it } from "vitest";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import type { AnswerTo, Asked, Reply, Work } from "../../src/apps/page/messages.ts";
import { NOTHING_GIVEN } from "../../src/season/logbook/index.ts";
import { commandOn } from "../server/commandOn.ts";

const TERN = resolve(import.meta.dirname, "../../fixtures/tern");
const AIRCRAFT = readFileSync(resolve(TERN, "aircraft.json"), "utf8");
/** Logs that reach every fit: pack, controller heat and propeller. */
const LOGS = ["bench-run.csv", "flight-01.csv", "flight-09.csv"];
const NEXT = { pack: null, ambientC: 24, reservePct: null, startPct: null };
const ANY_DAY = { ambientC: null, elevationM: null };

type Run = (asked: Asked, tell: () => void) => Promise<Reply>;

/** The core as the page carries it, in this engine: where the browser's page runs it on its own thread. */
async function coreOfPage(): Promise<<W extends Work>(work: W) => Promise<AnswerTo<W>>> {
  const source = /<script id="core" type="text\/plain">([\s\S]*?)<\/script>/.exec(
    (await pageText()) as string,
  )?.[1];
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
  runInContext(source ?? "", createContext(place));
  const run = place.tallywattCore as Run | null;
  if (run === null) throw new Error("the page's core did not start");
  return async <W extends Work>(work: W) => {
    const { answer, fault } = await run({ number: 1, work }, () => {});
    if (answer === null) throw new Error(fault ?? "");
    return JSON.parse(JSON.stringify(answer)) as AnswerTo<W>;
  };
}

describe("the page's own core in the command's engine", () => {
  const book = mkdtempSync(join(tmpdir(), "page-core-"));
  afterAll(() => rmSync(book, { recursive: true, force: true }));
  const command = (words: string) => commandOn(book, TERN, words.split(" "));
  const json = async (words: string): Promise<unknown> => JSON.parse(await command(`${words} --json`));

  it("gives every number of the command digit for digit", async () => {
    const ask = await coreOfPage();
    const aircraft = { text: AIRCRAFT, file: "aircraft.json" };
    for (const file of LOGS) {
      const bytes = (): ArrayBuffer => Uint8Array.from(readFileSync(resolve(TERN, file))).buffer;
      const own = { file, answers: null } as const;
      const checking = { kind: "check", ...own, bytes: bytes(), aircraft: AIRCRAFT, remembered: {} } as const;
      expect((await ask(checking)).check, file).toEqual(await json(`check ${file} --aircraft aircraft.json`));
      const adding = { kind: "add", ...own, bytes: bytes(), aircraft, given: NOTHING_GIVEN } as const;
      await ask({ ...adding, chargedWith: [], isAgain: false, run: file });
      await command(`add ${file} --aircraft aircraft.json`);
    }
    expect((await ask({ kind: "list", aircraft: null })).list).toEqual(await json("list"));
    const timer = await ask({ kind: "timer", aircraft: null, ...NEXT });
    expect(timer.result).toEqual(await json("timer --ambient 24"));
    expect((await ask({ kind: "trend", aircraft: null })).result).toEqual(await json("trend"));
    const plan = await ask({ kind: "plan", aircraft, withBook: true, conditions: ANY_DAY });
    expect(plan.result).toEqual(await json("plan --aircraft aircraft.json"));
    const change = { diameterIn: 19, pitchIn: 10, blades: null, cells: null, capacityMah: null };
    const conditions = { ...ANY_DAY, reservePct: null };
    const swap = await ask({ kind: "swap", aircraft, withBook: true, logs: [], change, conditions });
    expect(swap.result).toEqual(await json("swap --aircraft aircraft.json --propeller 19x10"));
  });
});
