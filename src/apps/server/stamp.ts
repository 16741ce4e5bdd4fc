import { createHash } from "node:crypto";
import { type BookFiles, FLIGHT_FOLDER, INDEX_FILE } from "../../season/logbook/index.ts";

/**
 * A mark of a book's state: equal marks, equal books. An index that fits stands for the flights it was made from,
 * so their files need not be read.
 */
export function stampOf(files: Pick<BookFiles, "keys" | "get">): string {
  const index = files.get(INDEX_FILE);
  const hash = createHash("sha256");
  for (const path of [...files.keys()].sort()) {
    if (path === INDEX_FILE) continue;
    const isCovered = index !== undefined && path.startsWith(FLIGHT_FOLDER);
    hash.update(JSON.stringify([path, isCovered ? null : files.get(path)]));
  }
  return hash.update(JSON.stringify(index ?? null)).digest("hex");
}
