/** Every file of a drop, those of dropped folders too, in the order of their names. */
export async function droppedFiles({ items, files }: DataTransfer): Promise<readonly File[]> {
  // The entries are gone after the first pause: take them all at once.
  const entries = [...items].map((item) => item.webkitGetAsEntry());
  if (entries.some((entry) => entry === null)) return [...files];
  const found = await Promise.all(entries.map((entry) => (entry === null ? [] : filesOf(entry))));
  return found.flat();
}

async function filesOf(entry: FileSystemEntry): Promise<readonly File[]> {
  if (isFile(entry)) return [await new Promise<File>((resolve, reject) => entry.file(resolve, reject))];
  if (!isFolder(entry)) return [];
  const inside = (await entriesIn(entry)).sort((one, other) => one.name.localeCompare(other.name, "en"));
  return (await Promise.all(inside.filter(({ name }) => !name.startsWith(".")).map(filesOf))).flat();
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

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}
