import { randomUUID } from "node:crypto";
import { join } from "node:path";
import {
  BOOK_FILE,
  type BookChange,
  type BookFiles,
  type ChangeFrame,
  type Store,
  UnusableBookError,
} from "../../../season/logbook/index.ts";
import { LockBusyError, sha256Of } from "../../disk/index.ts";
import { CannotChangeError, folderStore, JOURNAL, JournalDamagedError } from "../../folderBook/index.ts";
import type { Call, OptionDefinition } from "../commandDefinition.ts";
import { EXIT } from "../exitCodes.ts";
import { Failure, reasonOf } from "../failure.ts";
import type { Io } from "../io.ts";
import { releaseOf } from "../release.ts";
import type { Talk } from "../talk.ts";
import { bookFolder } from "./bookFolder.ts";
import { logbookSentences } from "./sentences.ts";

export const BOOK_OPTION: OptionDefinition = {
  flags: "--book <FOLDER>",
  help: "the logbook; else TALLYWATT_BOOK, else your data folder",
};
export const DRY_RUN_OPTION: OptionDefinition = {
  flags: "--dry-run",
  help: "say what would change and change nothing",
};
export const JSON_OPTION: OptionDefinition = {
  flags: "--json",
  help: "the result as JSON on standard output, nothing else",
};

/** The logbook that a call names. Its methods throw only Failures and bugs of ours. */
export interface OpenBook {
  readonly folder: string;
  readonly frame: ChangeFrame;
  readonly isDry: boolean;
  read<Result>(work: (files: BookFiles) => Result): Promise<Result>;
  readLog(path: string): Promise<Uint8Array | null>;
  /** Makes the change; with --dry-run only its result. */
  change<Result>(plan: (files: BookFiles) => BookChange<Result>): Promise<Result>;
}

/** What a folder of ours may hold before its book.json stands. */
const OWN_NAMES = ["aircraft", "flights", "logs", "index.txt", "undo.json", "journal.json"];

export function openBook(call: Call, io: Io, talk: Talk): OpenBook {
  const folder = bookFolder(call.text("book"), io);
  const store = folderStore({ folder, fileSystem: io.files, onWait: (message) => talk.say(message) });
  const isDry = call.has("dry-run");
  const frame = { digest: sha256Of, release: releaseOf(io), run: randomUUID() };
  return { folder, frame, isDry, ...guarded(store, folder, io, isDry) };
}

function guarded(
  store: Store,
  folder: string,
  io: Io,
  isDry: boolean,
): Pick<OpenBook, "read" | "readLog" | "change"> {
  const asFailure = (error: unknown): never => {
    throw failureOf(error, folder) ?? error;
  };
  return {
    read: (work) => store.read(work).catch(asFailure),
    readLog: (path) => store.readLog(path).catch(asFailure),
    change: (plan) => {
      const checked = (files: BookFiles): ReturnType<typeof plan> => {
        if (!files.has(BOOK_FILE)) refuseForeignFolder(folder, io);
        return plan(files);
      };
      if (isDry) return store.read((files) => checked(files).result).catch(asFailure);
      return store.change(checked).catch(asFailure);
    },
  };
}

/** A mistyped --book must not read as a logbook that is whole or unchanged, nor be made by looking for it. */
export function refuseMissingBook(folder: string, io: Io): void {
  if (!isBookThere(folder, io)) throw new Failure(EXIT.unusable, logbookSentences.noBook(folder));
}

export function isBookThere(folder: string, { files }: Io): boolean {
  try {
    return [BOOK_FILE, JOURNAL].some((name) => files.size(join(folder, name)) !== null);
  } catch (error) {
    throw failureOf(error, folder) ?? error;
  }
}

/** A mistyped --book must not turn a folder of other files into a logbook. */
function refuseForeignFolder(folder: string, io: Io): void {
  const foreign = io.files
    .list(folder)
    .find((name) => !OWN_NAMES.includes(name) && !name.endsWith(".writing") && !name.startsWith("."));
  if (foreign !== undefined) {
    throw new Failure(EXIT.unusable, logbookSentences.notABook(folder, foreign));
  }
}

function failureOf(error: unknown, folder: string): Failure | null {
  if (error instanceof UnusableBookError) {
    return new Failure(error.isNewer ? EXIT.cannotWrite : EXIT.unusable, error.message);
  }
  if (error instanceof JournalDamagedError) return new Failure(EXIT.unusable, error.message);
  if (error instanceof LockBusyError) return new Failure(EXIT.cannotWrite, error.message);
  if (error instanceof CannotChangeError) {
    const text = logbookSentences.cannotChange(folder, reasonOf(error.cause), error.neededBytes);
    return new Failure(EXIT.cannotWrite, text, { cause: error });
  }
  if (!isDiskError(error)) return null;
  return new Failure(EXIT.cannotWrite, logbookSentences.cannotRead(folder, reasonOf(error)), {
    cause: error,
  });
}

/** An error of a file call, not a fault of ours. */
function isDiskError(error: unknown): boolean {
  return error instanceof Error && "code" in error && /^E[A-Z0-9]+$/.test(String(error.code));
}
