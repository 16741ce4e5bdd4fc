import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { nodeFileSystem } from "../../src/apps/disk/index.ts";
import { verifyFolder } from "../../src/apps/folderBook/index.ts";
import { servedBook } from "../../src/apps/server/bookClient.ts";
import { readFlights, type Store, storeOver } from "../../src/season/logbook/index.ts";
import { flightLog } from "../commands/bookMachine.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";
import { addTo, digest } from "./addTo.ts";
import { commandOn } from "./commandOn.ts";
import { type Served, serve } from "./served.ts";

const EACH = 4;

describe("several programs on one served book", () => {
  let served: Served;
  let home: string;

  beforeEach(async () => {
    served = await serve();
    home = dirname(served.folder);
    writeFileSync(join(home, "heron.json"), SAMPLE_AIRCRAFT);
  });

  afterEach(() => served.end());

  async function page(): Promise<Store> {
    return storeOver((await servedBook(served.origin, served.token)).keeper);
  }

  const command = (words: readonly string[]) => commandOn(served.folder, home, words);

  const log = (day: number): string =>
    flightLog({ currentA: 18 + day * 0.3, startsAt: `2026-06-${String(day).padStart(2, "0")} 10:00:00` });

  it("lose no flight when two pages and the command line add at once", async () => {
    const [one, other] = [await page(), await page()];
    const days = (from: number) => Array.from({ length: EACH }, (_, at) => from + at);
    for (const day of days(21)) writeFileSync(join(home, `log-${day}.csv`), log(day));
    const logs = days(21).map((day) => `log-${day}.csv`);
    const [added] = await Promise.all([
      Promise.all([
        ...days(1).map((day) => addTo(one, log(day))),
        ...days(11).map((day) => addTo(other, log(day))),
      ]),
      command(["add", ...logs, "--aircraft", "heron.json"]),
    ]);
    expect(added.every(({ state }) => state === "added")).toBe(true);
    for (const store of [one, other, await page()]) {
      const flights = await store.read((files) =>
        readFlights(files, digest).entries.map(({ flight }) => flight),
      );
      expect(flights).toEqual(
        [...days(1), ...days(11), ...days(21)].map((day) => `2026-06-${String(day).padStart(2, "0")}-1`),
      );
    }
    const found = verifyFolder(nodeFileSystem, served.folder);
    expect(found.problems).toEqual([]);
    expect(found).toMatchObject({ flights: 3 * EACH, logs: 3 * EACH });
    expect(served.bugs).toEqual([]);
  });

  it("see each other's changes, also those of an editor", async () => {
    const [one, other] = [await page(), await page()];
    await addTo(one, log(1));
    const flightsIn = (store: Store) => store.read((files) => readFlights(files, digest).entries.length);
    expect(await flightsIn(other)).toBe(1);
    await command(["remove", "2026-06-01-1", "--yes"]);
    expect([await flightsIn(one), await flightsIn(other)]).toEqual([0, 0]);
    await command(["undo"]);
    expect(await flightsIn(one)).toBe(1);
    mkdirSync(join(served.folder, "aircraft"), { recursive: true });
    const path = join(served.folder, "aircraft", "Heron.json");
    const edited = readFileSync(path, "utf8").replace("{", "{ // mine\n");
    writeFileSync(path, edited);
    expect(await other.read((files) => files.get("aircraft/Heron.json"))).toBe(edited);
    const flight = join(served.folder, "flights", "2026-06-01-1.json");
    writeFileSync(flight, readFileSync(flight, "utf8").replace('"complete": true', '"complete": false'));
    expect(await other.read((files) => readFlights(files, digest).damaged)).toHaveLength(1);
  });

  it("keep a log byte for byte, and give it back", async () => {
    const store = await page();
    await addTo(store, log(1));
    const [path = ""] = await store.read((files) =>
      readFlights(files, digest).entries.map((entry) => entry.log.path),
    );
    expect(Buffer.from((await store.readLog(path)) ?? []).toString()).toBe(log(1));
    expect(await store.readLog("logs/0123456789abcdef-none.csv")).toBeNull();
  });

  it("have what they are at ended before the server stops", async () => {
    const body = new TextEncoder().encode(log(1));
    const { hostname, port } = new URL(served.origin);
    const path = `/book/logs/${digest(body).slice(0, 16)}-one.csv`;
    const headers = {
      host: served.authority,
      authorization: `Bearer ${served.token}`,
      "content-type": "application/octet-stream",
      "content-length": String(body.length),
      expect: "100-continue",
    };
    const putting = request({ hostname, port, path, method: "PUT", headers });
    putting.flushHeaders();
    await new Promise((resolve) => putting.once("continue", resolve));
    const ended = served.end();
    putting.end(body);
    const status = await new Promise((resolve) => putting.once("response", (got) => resolve(got.statusCode)));
    expect(status).toBe(204);
    await ended;
    served = await serve();
  });

  it("say so when the program behind them has ended", async () => {
    const store = await page();
    await served.end();
    await expect(store.read(() => null)).rejects.toThrow("Start it again");
    served = await serve();
    const old = storeOver((await servedBook(served.origin, served.token)).keeper);
    expect(await old.read((files) => files.size)).toBe(0);
    await expect(servedBook(served.origin, "of an earlier start")).rejects.toThrow("an earlier start");
  });
});
