import { type BookChange, type BookKeeper, type BookState, filesAfter } from "../../season/logbook/index.ts";
import {
  BOOK,
  type ChangedMessage,
  type ChangeMessage,
  type FaultMessage,
  LOGS,
  type StateMessage,
} from "./bookMessages.ts";
import { isMadeIn, LostAnswer } from "./lostAnswer.ts";

/** The server did not do what was asked, or it is not known whether it did; the text is for the user. */
export class ServerError extends Error {
  constructor(text: string, options: ErrorOptions = {}) {
    super(text, options);
    this.name = "ServerError";
  }
}

export const serverSentences = {
  gone: (): string =>
    "The program behind this page has ended, so the logbook cannot be reached. Start it again: tallywatt page",
  notKnown: (): string =>
    "No answer came to this change: it is not known whether it was made. Look at the flights again before you repeat it.",
  oldToken: (): string =>
    "This page belongs to an earlier start of tallywatt page. Open the address that it printed last.",
};

/** Asks one server; relative addresses are below its origin. */
type Ask = (path: string, request?: RequestInit) => Promise<Response>;

/** A browser's side of a served book, and the name of its folder. Rejects where the server cannot be reached. */
export async function servedBook(
  origin: string,
  token: string,
): Promise<{ readonly keeper: BookKeeper; readonly folder: string }> {
  const ask = asker(origin, token);
  const first = (await (await ask(BOOK)).json()) as StateMessage;
  let known = stateOf(first);
  const keeper: BookKeeper = {
    load: async (stamp) => {
      const response = await ask(`${BOOK}?at=${known.stamp}`);
      if (response.status !== 204) known = stateOf((await response.json()) as StateMessage);
      return known.stamp === stamp ? null : known;
    },
    commit: async (stamp, change) => {
      for (const { path, bytes } of change.logs) await putLog(ask, path, bytes);
      if (change.files.length === 0) return true;
      const changed = await send(ask, stamp, change).catch(async (error: unknown) => {
        if (!(error instanceof LostAnswer)) throw error;
        known = await stateWith(ask, change, error);
        return known;
      });
      if (changed === null) return false;
      // Other files than those of the stamp are not known here: then the next load asks for all.
      if (known.stamp === stamp) known = { stamp: changed.stamp, files: filesAfter(known.files, change) };
      return true;
    },
    readLog: async (path) => {
      const response = await ask(`${LOGS}${encodeURIComponent(path.slice("logs/".length))}`);
      return response.status === 404 ? null : new Uint8Array(await response.arrayBuffer());
    },
  };
  return { keeper, folder: first.folder };
}

function asker(origin: string, token: string): Ask {
  return async (path, request = {}) => {
    const headers = { ...request.headers, authorization: `Bearer ${token}` };
    const response = await answered(origin + path, { ...request, headers, cache: "no-store" });
    if (response.ok || [404, 409].includes(response.status)) return response;
    if (response.status === 401) throw new ServerError(serverSentences.oldToken());
    const { fault } = (await response.json()) as FaultMessage;
    if (response.status === 422) throw new ServerError(fault);
    throw new Error(`the server answered ${response.status}: ${fault}`);
  };
}

/** An idle connection may end just as it is used again; what can be asked twice is then asked twice. */
async function answered(address: string, request: RequestInit): Promise<Response> {
  const isRepeatable = request.method !== "POST";
  try {
    return await fetch(address, request).catch((error: unknown) => {
      if (!isRepeatable) throw error;
      return fetch(address, request);
    });
  } catch (error) {
    if (!isRepeatable) throw new LostAnswer({ cause: error });
    throw new ServerError(serverSentences.gone(), { cause: error });
  }
}

async function putLog(ask: Ask, path: string, bytes: Uint8Array): Promise<void> {
  const headers = { "content-type": "application/octet-stream" };
  const name = encodeURIComponent(path.slice("logs/".length));
  await ask(LOGS + name, { method: "PUT", headers, body: new Blob([bytes as Uint8Array<ArrayBuffer>]) });
}

/** Null when the book has not this stamp any more. */
async function send(
  ask: Ask,
  stamp: string,
  { files, index, dropLogs }: BookChange<unknown>,
): Promise<ChangedMessage | null> {
  const message: ChangeMessage = { stamp, files, index, dropLogs };
  const headers = { "content-type": "application/json" };
  const response = await ask(BOOK, { method: "POST", headers, body: JSON.stringify(message) });
  if (response.status === 409) return null;
  return response.json().catch((error: unknown) => {
    throw new LostAnswer({ cause: error });
  });
}

/** The book with a change whose answer was lost. Where it is not in the book, nobody knows: it may still be made. */
async function stateWith(ask: Ask, change: BookChange<unknown>, lost: LostAnswer): Promise<BookState> {
  try {
    const state = stateOf((await (await ask(BOOK)).json()) as StateMessage);
    if (isMadeIn(state.files, change)) return state;
  } catch (error) {
    // What keeps the second look from the book is said too.
    if (error instanceof ServerError)
      throw new ServerError(`${serverSentences.notKnown()} ${error.message}`, { cause: lost });
  }
  throw new ServerError(serverSentences.notKnown(), { cause: lost });
}

function stateOf({ stamp, files }: StateMessage): BookState {
  return { stamp, files: new Map(Object.entries(files)) };
}
