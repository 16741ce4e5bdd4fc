import { createHash } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import { MOST_BYTES } from "../../log/reading/index.ts";
import {
  type BookChange,
  type BookFiles,
  type FileChange,
  INDEX_FILE,
  type Store,
} from "../../season/logbook/index.ts";
import { BOOK, type ChangedMessage, LOGS, MOST_CHANGE_BYTES, type StateMessage } from "./bookMessages.ts";
import { logPathOf } from "./bookPaths.ts";
import { changeOf } from "./changeOf.ts";
import { checkType } from "./checkRequest.ts";
import { readBody } from "./readBody.ts";
import { Refusal } from "./refusal.ts";
import { stampOf } from "./stamp.ts";

/** A log is named by the first digits of its digest. */
const DIGITS_IN_NAME = 16;

/** What a request for the book is answered with. */
export interface BookReply {
  readonly status: number;
  readonly body: object | Uint8Array | null;
}

/** The book's store; a change is planned from its files alone. */
export interface ServedStore extends Pick<Store, "read" | "readLog"> {
  change<Result>(plan: (files: BookFiles) => BookChange<Result>): Promise<Result>;
}

export interface ServedBook {
  readonly store: ServedStore;
  readonly folder: string;
}

/** Answers a request below BOOK whose sender was checked. Throws a Refusal where there is nothing to answer. */
export async function bookReply(
  request: IncomingMessage,
  response: ServerResponse,
  { store, folder }: ServedBook,
): Promise<BookReply> {
  const { method = "", url = "" } = request;
  const [path = "", query = ""] = url.split("?");
  if (path === BOOK) {
    if (method === "GET") return stateReply(store, folder, new URLSearchParams(query).get("at"));
    if (method !== "POST") throw new Refusal(405, "this is read or changed", "GET, POST");
    checkType(request, "application/json");
    return changeReply(store, await readBody(request, response, MOST_CHANGE_BYTES));
  }
  const log = path.startsWith(LOGS) ? logPathOf(path.slice(LOGS.length)) : null;
  if (log === null) throw new Refusal(404, "there is nothing here");
  if (method === "GET") return logReply(store, log);
  if (method !== "PUT") throw new Refusal(405, "a log is read or put", "GET, PUT");
  checkType(request, "application/octet-stream");
  return putLog(store, log, await readBody(request, response, MOST_BYTES));
}

function stateReply(store: ServedStore, folder: string, at: string | null): Promise<BookReply> {
  return store.read((files) => {
    const stamp = stampOf(files);
    if (stamp === at) return { status: 204, body: null };
    // One null-prototype record: a file may be named like anything.
    const texts: Record<string, string> = Object.create(null) as Record<string, string>;
    for (const path of [...files.keys(), INDEX_FILE]) {
      const text = files.get(path);
      if (text !== undefined) texts[path] = text;
    }
    return { status: 200, body: { stamp, folder, files: texts } satisfies StateMessage };
  });
}

async function logReply(store: ServedStore, path: string): Promise<BookReply> {
  const body = await store.readLog(path);
  if (body === null) throw new Refusal(404, "there is no such log");
  return { status: 200, body };
}

/** A log is put before the change that refers to it, so that no flight is ever without; its name says its digest. */
async function putLog(store: ServedStore, path: string, bytes: Uint8Array): Promise<BookReply> {
  const digest = createHash("sha256").update(bytes).digest("hex").slice(0, DIGITS_IN_NAME);
  if (!path.startsWith(`logs/${digest}-`)) throw new Refusal(400, "the log's name does not fit its bytes");
  await store.change(() => ({ logs: [{ path, bytes }], files: [], index: null, dropLogs: [], result: null }));
  return { status: 204, body: null };
}

async function changeReply(store: ServedStore, body: Uint8Array): Promise<BookReply> {
  const { stamp, files: changes, index, dropLogs } = changeOf(body);
  const after = await store.change((files) => {
    const isCurrent = stampOf(files) === stamp;
    return {
      logs: [],
      files: isCurrent ? changes : [],
      index: isCurrent ? index : null,
      dropLogs: isCurrent ? dropLogs : [],
      result: isCurrent ? stampOf(changedFiles(files, changes, index)) : null,
    };
  });
  if (after === null) throw new Refusal(409, "the logbook was changed meanwhile");
  return { status: 200, body: { stamp: after } satisfies ChangedMessage };
}

/** The files as they will be: only what is asked for is read. */
function changedFiles(
  files: BookFiles,
  changes: readonly FileChange[],
  index: string | null,
): Pick<BookFiles, "keys" | "get"> {
  const texts = new Map(
    [...changes, { path: INDEX_FILE, text: index }].map(({ path, text }) => [path, text]),
  );
  const paths = new Set([...files.keys(), ...texts.keys()]);
  for (const [path, text] of texts) if (text === null) paths.delete(path);
  const get = (path: string) => (texts.has(path) ? (texts.get(path) ?? undefined) : files.get(path));
  return { keys: () => paths.keys(), get };
}
