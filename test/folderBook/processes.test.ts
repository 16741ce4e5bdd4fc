import { mkdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { STALE_LOCK_S } from "../../src/apps/disk/index.ts";
import { seededRandom } from "../generator/random.ts";
import {
  bookOf,
  buildProgram,
  ended,
  folderOfLogs,
  killAdding,
  logName,
  raceAdding,
  start,
} from "./bookProcesses.ts";

const SEED = 20260614;
let program = "";

beforeAll(async () => {
  program = await buildProgram();
});
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true, force: true }));

describe("real processes on a real disk", () => {
  it("lose no acknowledged flight and damage nothing when they are killed", async () => {
    const result = await killAdding(program, 30, seededRandom(SEED));
    console.log(`seed ${SEED}: ${JSON.stringify(result)}`);
    expect(result.lost).toEqual([]);
    expect(result.damage).toEqual([]);
    expect(result.killed).toBeGreaterThan(5);
    expect(result.acknowledged).toBeGreaterThan(2);
  });

  it("lose no flight when four of them add at once", async () => {
    const { exits, flights, damage } = await raceAdding(program, 4, 4);
    expect(exits.filter((exit) => exit !== EXIT.done)).toEqual([]);
    expect(flights).toBe(16);
    expect(damage).toEqual([]);
  });

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
