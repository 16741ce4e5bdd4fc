import { join } from "node:path";
import {
  aircraftOfBook,
  assertUsable,
  BOOK_FILE,
  type BookFiles,
  flightIn,
  harmlessName,
  INDEX_FILE,
  judgedFacts,
  type KeptFlight,
  type LogbookEntry,
  readKeptFlights,
  readUndo,
  bookSentences as say,
  UNDO_FILE,
} from "../../season/logbook/index.ts";
import type { FileSystem } from "../disk/index.ts";
import { sha256Of } from "../disk/index.ts";
import { folderFiles } from "./folderFiles.ts";
import { changesOf, JOURNAL } from "./journal.ts";

/** A file that is not as it must be. */
export interface FolderProblem {
  /** Relative to the book. */
  readonly path: string;
  readonly what: string;
  /** What to do about it. */
  readonly todo: string;
  /** False for what is only worth knowing. */
  readonly isDamage: boolean;
}

export interface FolderCheck {
  readonly flights: number;
  readonly logs: number;
  readonly problems: readonly FolderProblem[];
}

/** Reads every file of a logbook's folder and names what is damaged. Writes nothing. */
export function verifyFolder(fileSystem: FileSystem, folder: string): FolderCheck {
  const journal = fileSystem.read(join(folder, JOURNAL));
  const files = folderFiles(fileSystem, folder, changesOf(journal));
  const kept = readKeptFlights(files, sha256Of);
  const logs = fileSystem.list(join(folder, "logs")).map((name) => `logs/${name}`);
  return {
    flights: kept.entries.length,
    logs: logs.length,
    problems: [
      ...bookProblems(files),
      ...(journal !== null && changesOf(journal).length === 0
        ? [damage(JOURNAL, say.journalWrong(), say.verifyJournal())]
        : []),
      ...aircraftOfBook(files).damaged.map(({ path, why }) => damage(path, why, say.verifyAircraft())),
      ...aircraftNotes(files, kept.entries),
      ...kept.damaged.map(({ path, why }) => damage(path, why, say.verifyEntry(flightIn(path) ?? path))),
      ...logProblems(fileSystem, folder, kept.entries),
      ...undoProblems(files),
      ...indexProblems(fileSystem, folder, files),
      ...orphans(logs, kept.entries, kept.damaged.length > 0, files),
    ],
  };
}

function bookProblems(files: BookFiles): readonly FolderProblem[] {
  try {
    assertUsable(files.get(BOOK_FILE));
  } catch (error) {
    const what = error instanceof Error ? error.message : say.bookWrong();
    return [damage(BOOK_FILE, what, say.verifyBook())];
  }
  const isMissing = files.size > 0 && !files.has(BOOK_FILE);
  return isMissing ? [damage(BOOK_FILE, say.bookWrong(), say.verifyBook())] : [];
}

/** An aircraft file has no checksum, since its owner edits it: what it says is held against the latest flight. */
function aircraftNotes(files: BookFiles, entries: readonly KeptFlight[]): readonly FolderProblem[] {
  const { aircraft } = aircraftOfBook(files);
  const latest = new Map<string, KeptFlight>();
  for (const entry of entries) {
    if (entry.sequence > (latest.get(entry.aircraft)?.sequence ?? 0)) latest.set(entry.aircraft, entry);
  }
  return [...latest].flatMap(([name, entry]) => {
    const own = aircraft.find((one) => one.name === name);
    const path = own?.path ?? `aircraft/${harmlessName(name)}.json`;
    if (own === undefined) return [note(path, say.aircraftLost(name), say.verifyAircraft())];
    const facts = judgedFacts(own.facts, entry.given, entry.reading.cells);
    const isSame = JSON.stringify([facts, own.budget]) === JSON.stringify([entry.facts, entry.budget]);
    return isSame ? [] : [note(path, say.aircraftDiffers(entry.flight), say.verifyDiffers())];
  });
}

function logProblems(
  fileSystem: FileSystem,
  folder: string,
  entries: readonly LogbookEntry[],
): readonly FolderProblem[] {
  const digests = new Map(entries.map(({ log }) => [log.path, log.sha256]));
  return [...digests].flatMap(([path, sha256]) => {
    const bytes = fileSystem.read(join(folder, ...path.split("/")));
    if (bytes === null) return [damage(path, say.logMissing(), say.verifyLog())];
    return sha256Of(bytes) === sha256 ? [] : [damage(path, say.logDamaged(), say.verifyLog())];
  });
}

function undoProblems(files: BookFiles): readonly FolderProblem[] {
  const isDamaged = readUndo(files, sha256Of).state === "damaged";
  return isDamaged ? [damage(UNDO_FILE, say.undoWrong(), say.verifyUndo())] : [];
}

/** An index that does not fit is no damage: it is made again. */
function indexProblems(fileSystem: FileSystem, folder: string, files: BookFiles): readonly FolderProblem[] {
  const isThere = fileSystem.size(join(folder, INDEX_FILE)) !== null;
  if (!isThere || files.get(INDEX_FILE) !== undefined) return [];
  return [note(INDEX_FILE, say.indexWrong(), say.verifyIndex())];
}

/** Logs that no flight and no undo needs. */
function orphans(
  logs: readonly string[],
  entries: readonly LogbookEntry[],
  isDoubtful: boolean,
  files: BookFiles,
): readonly FolderProblem[] {
  if (isDoubtful) return [];
  const undo = readUndo(files, sha256Of);
  const needed = new Set(entries.map(({ log }) => log.path));
  for (const path of undo.state === "read" ? undo.record.logs : []) needed.add(path);
  return logs.filter((path) => !needed.has(path)).map((path) => note(path, say.orphan(), say.verifyOrphan()));
}

function note(path: string, what: string, todo: string): FolderProblem {
  return { path, what, todo, isDamage: false };
}

function damage(path: string, what: string, todo: string): FolderProblem {
  return { path, what, todo, isDamage: true };
}
