import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { ServerError, servedBook, serverSentences } from "../../src/apps/server/bookClient.ts";
import { readFlights, type Store, storeOver } from "../../src/season/logbook/index.ts";
import { flightLog } from "../commands/bookMachine.ts";
import { addTo, digest } from "./addTo.ts";
import { type Served, serve } from "./served.ts";

type Fetch = typeof fetch;

describe("a change whose answer is lost on the way", () => {
  const real: Fetch = fetch;
  let served: Served;
  let store: Store;

  beforeEach(async () => {
    served = await serve();
    store = storeOver((await servedBook(served.origin, served.token)).keeper);
  });
  afterEach(async () => {
    globalThis.fetch = real;
    await served.end();
  });

  const flights = () => store.read((files) => readFlights(files, digest).entries.map(({ flight }) => flight));

  /** Every POST goes by this; the rest as it is. */
  function posts(send: Fetch): void {
    globalThis.fetch = (address, request) =>
      request?.method === "POST" ? send(address, request) : real(address, request);
  }

  it.each([
    ["before a byte of it came", async () => Promise.reject(new TypeError("the connection ended"))],
    ["in the middle of it", async () => new Response("{", { status: 200 })],
  ])("is found in the book, %s: it was made, and is made once", async (_when, lost) => {
    posts(async (address, request) => {
      await real(address, request);
      return lost();
    });
    expect((await addTo(store, flightLog({ startsAt: "2026-06-01 10:00:00" }))).state).toBe("added");
    globalThis.fetch = real;
    expect(await flights()).toEqual(["2026-06-01-1"]);
    expect((await addTo(store, flightLog({ currentA: 31, startsAt: "2026-06-02 10:00:00" }))).state).toBe(
      "added",
    );
    expect(await flights()).toEqual(["2026-06-01-1", "2026-06-02-1"]);
  });

  it("is said to be not known where it is not in the book, and where the server is gone both are said", async () => {
    let isGone = false;
    globalThis.fetch = (address, request) => {
      isGone ||= request?.method === "POST";
      return isGone ? Promise.reject(new TypeError("the connection ended")) : real(address, request);
    };
    const both = `${serverSentences.notKnown()} ${serverSentences.gone()}`;
    await expect(addTo(store, flightLog())).rejects.toThrow(new ServerError(both));
    globalThis.fetch = real;
    posts(() => Promise.reject(new TypeError("the connection ended")));
    await expect(addTo(store, flightLog())).rejects.toThrow(new ServerError(serverSentences.notKnown()));
    globalThis.fetch = real;
    expect(await flights()).toEqual([]);
    expect(serverSentences.notKnown()).not.toMatch(/nothing was changed/i);
  });
});
