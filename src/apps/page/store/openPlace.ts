import { type Store, storeOver } from "../../../season/logbook/index.ts";
import { ServerError, servedBook } from "../../server/bookClient.ts";
import type { BookPlace, BookServer } from "../messages.ts";
import { reasonOf } from "../reasonOf.ts";
import { pageSentences } from "../sentences.ts";
import { browserKeeper, openDatabase } from "./browserKeeper.ts";
import { memoryKeeper } from "./memoryKeeper.ts";

export interface OpenPlace {
  readonly store: Store;
  readonly place: BookPlace;
}

/** Stands in until a book is opened: an empty one in this page's memory. */
export function noPlace(): OpenPlace {
  return memoryPlace(pageSentences.notOpen());
}

/** The book of this page: the server's folder, else the browser's storage, else this page's memory. */
export async function openPlace(server: BookServer | null): Promise<OpenPlace> {
  if (server !== null) return folderPlace(server);
  try {
    const keeper = browserKeeper(await openDatabase());
    await keeper.load(null);
    return { store: storeOver(keeper), place: await browserPlace() };
  } catch (error) {
    return memoryPlace(reasonOf(error));
  }
}

function memoryPlace(why: string): OpenPlace {
  const text = pageSentences.inMemory(why);
  const place = { where: "memory", folder: null, isKept: false, isPromised: false, text } as const;
  return { store: storeOver(memoryKeeper()), place };
}

async function folderPlace({ origin, token }: BookServer): Promise<OpenPlace> {
  try {
    const { keeper, folder } = await servedBook(origin, token);
    const text = pageSentences.inFolder(folder);
    return {
      store: storeOver(keeper),
      place: { where: "folder", folder, isKept: true, isPromised: true, text },
    };
  } catch (error) {
    if (!(error instanceof ServerError)) throw error;
    const place = {
      where: "folder",
      folder: null,
      isKept: false,
      isPromised: false,
      text: error.message,
    } as const;
    return { store: closedStore(error), place };
  }
}

/** A book that cannot be reached: logs can still be checked, but nothing is put where it would be lost. */
function closedStore(error: ServerError): Store {
  const refuse = () => Promise.reject(error);
  return { read: refuse, readLog: refuse, change: refuse };
}

async function browserPlace(): Promise<BookPlace> {
  const isPromised = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  const text = `${pageSentences.inBrowser(isPromised)} ${pageSentences.inPrivateWindow()}`;
  return { where: "browser", folder: null, isKept: true, isPromised, text };
}
