import { type Store, storeOver } from "../../../season/logbook/index.ts";
import { servedBook } from "../../server/bookClient.ts";
import type { BookPlace, BookServer } from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import { browserKeeper, openDatabase } from "./browserKeeper.ts";
import { memoryKeeper } from "./memoryKeeper.ts";

export interface OpenPlace {
  readonly store: Store;
  readonly place: BookPlace;
}

/** The book of this page: the server's folder, else the browser's storage, else this page's memory. */
export async function openPlace(server: BookServer | null): Promise<OpenPlace> {
  if (server !== null) return folderPlace(server);
  try {
    const keeper = browserKeeper(await openDatabase());
    await keeper.load(null);
    return { store: storeOver(keeper), place: await browserPlace() };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const text = pageSentences.inMemory(why);
    const place = { where: "memory", folder: null, isKept: false, isPromised: false, text } as const;
    return { store: storeOver(memoryKeeper()), place };
  }
}

async function folderPlace({ origin, token }: BookServer): Promise<OpenPlace> {
  const { keeper, folder } = await servedBook(origin, token);
  const text = pageSentences.inFolder(folder);
  return {
    store: storeOver(keeper),
    place: { where: "folder", folder, isKept: true, isPromised: true, text },
  };
}

async function browserPlace(): Promise<BookPlace> {
  const isPromised = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  const text = `${pageSentences.inBrowser(isPromised)} ${pageSentences.inPrivateWindow()}`;
  return { where: "browser", folder: null, isKept: true, isPromised, text };
}
