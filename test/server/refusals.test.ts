import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { servedBook } from "../../src/apps/server/bookClient.ts";
import { newBookText } from "../../src/season/logbook/index.ts";
import { bytesOf, type Sent, type Served, send, serve } from "./served.ts";

const GIGABYTE = 1_000_000_000;
const JSON_TYPE = { "content-type": "application/json" };
const BYTES_TYPE = { "content-type": "application/octet-stream" };
const LOG = "/book/logs/0123456789abcdef-one.csv";

describe("a request that the page would not send", () => {
  let served: Served;
  let before: string;

  beforeAll(async () => {
    served = await serve();
    for (const below of ["flights", "aircraft", "logs"])
      mkdirSync(join(served.folder, below), { recursive: true });
    writeFileSync(join(served.folder, "book.json"), newBookText("0.1.0"));
    writeFileSync(join(served.folder, "flights", "one.json"), "{}");
    writeFileSync(join(served.folder, "..", "beside.json"), "not of the book");
    before = bytesOf(join(served.folder, ".."));
  });

  afterAll(() => served.end());

  const withToken = (sent: Sent): Sent => ({
    ...sent,
    headers: { authorization: `Bearer ${served.token}`, ...sent.headers },
  });
  const change = (files: unknown, more: object = {}): Sent => ({
    method: "POST",
    path: "/book",
    headers: JSON_TYPE,
    body: JSON.stringify({ stamp: "x", files, index: null, dropLogs: [], ...more }),
  });

  it("is answered when the page itself sends it", async () => {
    const got = await send(served, withToken({ path: "/book" }));
    expect(got.status).toBe(200);
    expect(Object.keys((JSON.parse(got.text) as { files: object }).files).sort()).toEqual([
      "book.json",
      "flights/one.json",
    ]);
    const page = await send(served, { path: "/" });
    expect(page.status).toBe(200);
    expect(page.headers["content-security-policy"]).toBe(
      "default-src 'none'; connect-src 'self'; frame-ancestors 'none'",
    );
    expect(page.text).toContain(`content="default-src 'none'; connect-src 'self'"`);
  });

  const FOREIGN = [
    ["a foreign Host", 421, { host: "tallywatt.example" }],
    ["a foreign Host that leads here", 421, { host: "tallywatt.example:80" }],
    ["this machine's name in place of its address", 421, { host: "localhost" }],
    ["a foreign Origin", 403, { origin: "http://tallywatt.example" }],
    ["the Origin of a page from disk", 403, { origin: "null" }],
    ["another port's Origin", 403, { origin: "http://127.0.0.1:1" }],
    ["another site's page", 403, { "sec-fetch-site": "cross-site" }],
    ["another port's page", 403, { "sec-fetch-site": "same-site" }],
  ] as const;

  it.each(FOREIGN)("is refused from %s, for page and book", async (_what, status, headers) => {
    for (const path of ["/", "/book"]) {
      expect((await send(served, withToken({ path, headers }))).status, path).toBe(status);
    }
    const changing = withToken(change([]));
    expect((await send(served, { ...changing, headers: { ...changing.headers, ...headers } })).status).toBe(
      status,
    );
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
  });

  it.each([
    ["none", {}],
    ["another", { authorization: "Bearer abc" }],
    ["in the address only", {}],
    ["as another scheme", { authorization: "Basic abc" }],
  ])("is refused with a token: %s", async (what, headers) => {
    const query = what === "in the address only" ? `?token=${served.token}` : "";
    for (const sent of [{ path: `/book${query}` }, { path: LOG + query }, change([])] as Sent[]) {
      const got = await send(served, { ...sent, headers: { ...sent.headers, ...headers } });
      expect(got.status).toBe(401);
      expect(got.text).not.toContain("flights/one");
    }
  });

  it.each([
    "/book/logs/../../beside.json",
    "/book/logs/..%2f..%2fbeside.json",
    "/book/logs/%2e%2e/%2e%2e/beside.json",
    "/book/logs/%2e%2e%2f%2e%2e%2fbeside.json",
    "/book/logs/..%5c..%5cbeside.json",
    "/book/logs/0123456789abcdef-..%2f..%2fbeside.json",
    "/book/logs/0123456789abcdef-x%00.csv",
    "/book/logs/%c0%ae%c0%ae/beside.json",
    "/book/logs/",
    "/book/logs",
    "/book/../book.json",
    "/book/flights/one.json",
    "/book.json",
    "//book",
    "/..",
    "/index.html",
    "/favicon.ico",
    "http://127.0.0.1/book",
    "*",
  ])("finds nothing at %s", async (path) => {
    for (const method of ["GET", "PUT", "DELETE"]) {
      const got = await send(
        served,
        withToken({ path, method, headers: BYTES_TYPE, ...(method === "PUT" ? { body: "x" } : {}) }),
      );
      expect(got.status, method).toBeGreaterThanOrEqual(400);
      expect(got.text).not.toContain("not of the book");
    }
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
  });

  it.each(["HEAD", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"])("is refused as %s", async (method) => {
    const got = await send(served, withToken({ path: "/book", method }));
    expect(got.status).toBe(405);
    expect(got.headers.allow).toBe("GET, POST");
    expect((await send(served, { path: "/", method })).status).toBe(405);
    expect(got.headers["access-control-allow-origin"]).toBeUndefined();
  });

  it.each([
    "../beside.json",
    "flights/../../beside.json",
    "flights/../book.json",
    "/etc/hostname",
    "flights\\..\\..\\beside.json",
    "flights/a/b.json",
    "flights/.hidden.json",
    "flights/x\u0000.json",
    "flights/x.html",
    "logs/0123456789abcdef-x.csv",
    "journal.json",
    "index.txt",
    "",
    7,
  ])("changes nothing at the path %s", async (path) => {
    const state = await send(served, withToken({ path: "/book" }));
    const { stamp } = JSON.parse(state.text) as { stamp: string };
    const got = await send(served, withToken(change([{ path, text: "{}" }], { stamp })));
    expect(got.status).toBe(400);
    const drop = await send(served, withToken(change([], { stamp, dropLogs: [path] })));
    if (path !== "logs/0123456789abcdef-x.csv") expect(drop.status).toBe(400);
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
  });

  it.each([
    ["another type", 415, { ...change([]), headers: { "content-type": "text/plain" } }],
    ["no type", 415, { ...change([]), headers: {} }],
    ["no JSON", 400, { ...change([]), body: "{" }],
    ["no UTF-8", 400, { ...change([]), body: Uint8Array.of(0xff, 0xfe) }],
    ["a list", 400, { ...change([]), body: "[]" }],
    ["a text that is none", 400, change([{ path: "flights/one.json", text: 5 }])],
    ["an index that is not plain", 400, change([], { index: "é" })],
    ["an old stamp", 409, change([{ path: "flights/one.json", text: null }])],
    ["a log whose name is not its digest", 400, { method: "PUT", path: LOG, headers: BYTES_TYPE, body: "x" }],
    ["a log as JSON", 415, { method: "PUT", path: LOG, headers: JSON_TYPE, body: "x" }],
  ] as const)("is refused with %s", async (_what, status, sent) => {
    expect((await send(served, withToken(sent as Sent))).status).toBe(status);
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
  });

  const large = { path: LOG, method: "PUT", bodyBytes: GIGABYTE } as const;

  it.each([
    ["declared", 413, { "content-length": String(GIGABYTE) }],
    ["streamed without a length", 411, { "transfer-encoding": "chunked" }],
  ])("is refused early with a body of 1 GB, %s", async (_what, status, headers) => {
    for (const sent of [large, { ...large, path: "/book", method: "POST" }]) {
      const type = sent.path === "/book" ? JSON_TYPE : BYTES_TYPE;
      const got = await send(served, withToken({ ...sent, headers: { ...type, ...headers } }));
      expect(got.status).toBe(status);
      expect(got.sentBytes).toBeLessThan(GIGABYTE / 20);
    }
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
  });

  it("follows no link out of the folder", async () => {
    const link = join(served.folder, "aircraft", "linked.json");
    symlinkSync(join(served.folder, "..", "beside.json"), link);
    const got = await send(served, withToken({ path: "/book" }));
    rmSync(link);
    expect(got.status).toBe(422);
    expect(got.text).toContain("a link that leads out of the folder");
    expect(got.text).not.toContain("not of the book");
    rmSync(join(served.folder, "logs"), { recursive: true });
    symlinkSync(join(served.folder, ".."), join(served.folder, "logs"));
    const { keeper } = await servedBook(served.origin, served.token);
    const bytes = new TextEncoder().encode("x");
    const path = "logs/2d711642b726b044-one.csv";
    const put = keeper.commit("any", {
      logs: [{ path, bytes }],
      files: [],
      index: null,
      dropLogs: [],
      result: null,
    });
    await expect(put).rejects.toThrow("a link that leads out of the folder");
    rmSync(join(served.folder, "logs"));
    mkdirSync(join(served.folder, "logs"));
    expect(bytesOf(join(served.folder, ".."))).toBe(before);
    expect(readFileSync(join(served.folder, "..", "beside.json"), "utf8")).toBe("not of the book");
  });

  it("met no bug of ours", () => expect(served.bugs).toEqual([]));
});
