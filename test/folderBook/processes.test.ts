import { mkdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { STALE_LOCK_S } from "../../src/apps/disk/index.ts";
import { seededRandom } from "../generator/random.ts";
import {
  type Adder,
  bookOf,
  buildProgram,
  ended,
  folderOfLogs,
  killAdding,
  logName,
  raceAdding,
  start,
  workerAdder,
} from "./bookProcesses.ts";

const SEED = 20260614;
const KILLS = 60;
let program = "";
let worker: Adder;

beforeAll(async () => {
  program = await buildProgram();
  worker = await workerAdder(dirname(program));
});
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true, force: true }));

describe("real processes on a real disk", () => {
  // More of them, and with the whole command: scripts/soak-store.ts.
  it("lose no acknowledged flight and damage nothing when they are killed", async () => {
    const result = await killAdding(worker, KILLS, seededRandom(SEED));
    console.log(`seed ${SEED}: ${JSON.stringify(result)}`);
    expect(result.lost).toEqual([]);
    expect(result.damage).toEqual([]);
    expect(result.killed).toBe(KILLS);
    expect(result.acknowledged).toBeGreaterThan(10);
  }, 300_000);

  it("lose no flight when four of them add 50 each at once", async () => {
    const { exits, flights, damage } = await raceAdding(worker, 4, 50, 50);
    expect(exits.filter((exit) => exit !== EXIT.done)).toEqual([]);
    expect(flights).toBe(200);
    expect(damage).toEqual([]);
  }, 300_000);

  it("wait for a lock that a killed program left, say why, and end the wait by themselves", async () => {
    const { folder, book } = folderOfLogs(1);
    mkdirSync(book);
    mkdirSync(`${book}.lock`);
    const { exit, err } = await ended(
      start(program, folder, ["add", logName(0), "--aircraft", "heron.json"]),
    );
    expect(err).toContain(`ends after ${STALE_LOCK_S} s`);
    expect(exit).toBe(EXIT.done);
    expect((await bookOf(book)).logs).toEqual([logName(0)]);
    rmSync(folder, { recursive: true, force: true });
  });

  it("watch a folder until Ctrl-C, which ends them with 130 and leaves the book whole", async () => {
    const { folder, book } = folderOfLogs(2);
    const child = start(program, folder, ["add", "--watch", ".", "--aircraft", "heron.json"]);
    let out = "";
    child.stdout?.on("data", (part: Buffer) => {
      out += part.toString();
      if (out.includes(logName(0)) && out.includes(logName(1))) child.kill("SIGINT");
    });
    expect((await ended(child)).exit).toBe(EXIT.interrupted);
    const { logs, damage } = await bookOf(join(book));
    expect(logs).toHaveLength(2);
    expect(damage).toEqual([]);
    rmSync(folder, { recursive: true, force: true });
  });
});
