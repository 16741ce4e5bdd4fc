import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { CurrentCalibration, LogbookEntry } from "../../src/season/logbook/index.ts";
import { MemoryDisk } from "../folderBook/memoryDisk.ts";
import { runOnDisk } from "./inMemory.ts";

interface NotedLog {
  readonly file: string;
  readonly flights: readonly number[];
  readonly date: string;
  readonly pack: string;
  readonly propeller: string;
  readonly ambientC: number;
  readonly putBackMah: number | null;
  readonly note: string;
}
interface Listed {
  readonly flights: readonly (LogbookEntry & { kind: string; complete: boolean; log: string })[];
  readonly calibration: CurrentCalibration | null;
}

const FOLDER = resolve(import.meta.dirname, "../../fixtures/tern");
const bytesOf = (file: string): Uint8Array => new Uint8Array(readFileSync(resolve(FOLDER, file)));
const jsonOf = <Value>(file: string): Value => JSON.parse(new TextDecoder().decode(bytesOf(file))) as Value;
const { logs } = jsonOf<{ logs: readonly NotedLog[] }>("season.json");
const truth = jsonOf<{ logs: readonly { sensors: { ampGain: number } }[] }>("truth.json");

/** What the pilot types after each flight. */
function words({ file, date, pack, propeller, ambientC, putBackMah, note }: NotedLog): readonly string[] {
  return [
    ...["add", file, "--aircraft", "aircraft.json", "--pack", pack, "--propeller", propeller],
    ...["--ambient", String(ambientC), "--date", date],
    ...(putBackMah === null ? [] : ["--put-back", String(putBackMah)]),
    ...(note === "" ? [] : ["--note", note]),
  ];
}

describe("the demo season through the command", () => {
  const files = new Map(
    ["aircraft.json", ...logs.map(({ file }) => file)].map((file) => [`/field/${file}`, bytesOf(file)]),
  );
  const disk = new MemoryDisk(files);
  const run = (line: readonly string[]) => runOnDisk(disk, [...line, "--book", "book"]);
  const list = async (): Promise<Listed> => JSON.parse((await run(["list", "--json"])).out) as Listed;

  beforeAll(async () => {
    for (const log of logs) expect((await run(words(log))).exit, log.file).toBe(0);
  });

  it("is 14 flights and a bench run, in the order they were flown", async () => {
    const { flights } = await list();
    expect(flights.map(({ kind }) => kind).filter((kind) => kind === "flight")).toHaveLength(14);
    expect(flights.map(({ kind }) => kind).filter((kind) => kind === "benchRun")).toHaveLength(1);
    const flown = logs.flatMap(({ file, flights: own }) =>
      new Array<string>(Math.max(1, own.length)).fill(file),
    );
    expect(flights.map(({ log }) => log)).toEqual(flown);
    expect(flights.filter(({ complete }) => !complete).map(({ log }) => log)).toEqual(["flight-10.csv"]);
  });

  it("lets the put-backs find how low the current sensor reads", async () => {
    const { calibration } = await list();
    const trueGain = 1 / (truth.logs[0]?.sensors.ampGain ?? Number.NaN);
    console.log(
      `true gain ${trueGain.toFixed(4)}, found ${calibration?.gain.toFixed(4)} (${calibration?.low.toFixed(4)} to ${calibration?.high.toFixed(4)})`,
    );
    expect(calibration?.putBacks).toBe(logs.filter(({ putBackMah }) => putBackMah !== null).length);
    expect(calibration?.isApplied).toBe(true);
    expect(calibration?.low).toBeLessThan(trueGain);
    expect(calibration?.high).toBeGreaterThan(trueGain);
    expect((await run(["timer"])).out).toContain("current sensor reads");
  });

  it("stays the same when every log is added again, in one call and in any order", async () => {
    const before = (await list()).flights;
    const again = await run(["add", ...logs.map(({ file }) => file).reverse()]);
    expect(again.exit).toBe(0);
    expect(again.out).toContain(`0 flights added, ${logs.length} logs there already`);
    expect((await list()).flights).toEqual(before);
  });

  it("sets a timer on the flights with the propeller that is fitted", async () => {
    const setting = JSON.parse((await run(["timer", "--json"])).out) as {
      flights: number;
      timerS: number;
      leftOut: readonly { why: string }[];
    };
    expect(setting.flights).toBe(5);
    expect(setting.leftOut).toHaveLength(10);
    expect(setting.timerS).toBeGreaterThan(240);
  });

  it("changes nothing when it is rechecked with the same release", async () => {
    expect((await run(["recheck", "--dry-run"])).out).toContain("0 flights, 15 as before");
  });
});
