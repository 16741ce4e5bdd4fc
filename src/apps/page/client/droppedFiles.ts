import { PageError } from "./tell.ts";
import { clientWords } from "./words.ts";

/** One thing that was dropped, in every form that browsers give it. */
interface Dropped {
  readonly file: File | null;
  readonly entry: FileSystemEntry | null;
  /** Resolves to null where the browser gives none. */
  readonly handle: Promise<FileSystemHandle | null>;
}

/** Every file of a drop, those of dropped folders too, in the order of their names. */
export async function droppedFiles({ items }: DataTransfer): Promise<readonly File[]> {
  // The things are gone after the first pause: take them all at once.
  const dropped = [...items].filter(({ kind }) => kind === "file").map(formsOf);
  return (await Promise.all(dropped.map(filesIn))).flat();
}

function formsOf(item: DataTransferItem): Dropped {
  const own = item as DataTransferItem & { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> };
  const handle = own.getAsFileSystemHandle?.() ?? Promise.resolve(null);
  return { file: item.getAsFile(), entry: item.webkitGetAsEntry(), handle: handle.catch(() => null) };
}

/** On a page opened from disk some browsers open the handle of a folder alone; others know its entry alone. */
async function filesIn({ file, entry, handle }: Dropped): Promise<readonly File[]> {
  if (entry === null || !isFolder(entry)) return file === null ? [] : [file];
  const folder = await handle;
  if (folder !== null && isFolderHandle(folder)) return filesBelow(folder);
  return filesOf(entry).catch(() => {
    throw new PageError(clientWords.folderClosed);
  });
}

async function filesBelow(folder: FileSystemDirectoryHandle): Promise<readonly File[]> {
  const inside: FileSystemHandle[] = [];
  for await (const one of folder.values()) inside.push(one);
  const found = await Promise.all(
    inOrder(inside).map(async (one) => {
      if (isFolderHandle(one)) return filesBelow(one);
      return isFileHandle(one) ? [await one.getFile()] : [];
    }),
  );
  return found.flat();
}

async function filesOf(entry: FileSystemEntry): Promise<readonly File[]> {
  if (isFile(entry)) return [await new Promise<File>((resolve, reject) => entry.file(resolve, reject))];
  if (!isFolder(entry)) return [];
  return (await Promise.all(inOrder(await entriesIn(entry)).map(filesOf))).flat();
}

/** A reader gives a part of a folder at a time, an empty one at the end. */
async function entriesIn(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (part.length === 0) return all;
    all.push(...part);
  }
}

/** What a system hides is no log. */
function inOrder<Named extends { readonly name: string }>(all: readonly Named[]): readonly Named[] {
  const seen = all.filter(({ name }) => !name.startsWith("."));
  return seen.sort((one, other) => one.name.localeCompare(other.name, "en"));
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}

function isFileHandle(handle: FileSystemHandle): handle is FileSystemFileHandle {
  return handle.kind === "file";
}

function isFolderHandle(handle: FileSystemHandle): handle is FileSystemDirectoryHandle {
  return handle.kind === "directory";
}
