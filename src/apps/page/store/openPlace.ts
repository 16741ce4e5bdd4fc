import { type Store, storeOver } from "../../../season/logbook/index.ts";
import type { BookPlace, BookServer } from "../messages.ts";
import { pageSentences } from "../sentences.ts";
import { browserKeeper, openDatabase } from "./browserKeeper.ts";
import { memoryKeeper } from "./memoryKeeper.ts";

export interface OpenPlace {
  readonly store: Store;
  readonly place: BookPlace;
}

/** The book of this page: the server's folder, else the browser's storage, else this page's memory. */
export async function openPlace(_server: BookServer | null): Promise<OpenPlace> {
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

async function browserPlace(): Promise<BookPlace> {
  const isPromised = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  const text = `${pageSentences.inBrowser(isPromised)} ${pageSentences.inPrivateWindow()}`;
  return { where: "browser", folder: null, isKept: true, isPromised, text };
}
