/** Names that a log may have in a book: what the book itself gives them, and nothing that means something to a disk. */
const LOG_NAME = /^[0-9a-f]{16}-[A-Za-z0-9][A-Za-z0-9._-]{0,80}$/;
const OWN_FILES = ["book.json", "undo.json"];
const TEXT_FILE = /^(?:aircraft|flights)\/([^/\\:\0]{1,120})\.json$/;

/** The path of a log by its name in a request's address; null for any other name. */
export function logPathOf(encodedName: string): string | null {
  const name = decoded(encodedName);
  return name !== null && LOG_NAME.test(name) && !name.endsWith(".") ? `logs/${name}` : null;
}

/** True for a log's path in a book. */
export function isLogPath(path: unknown): path is string {
  return typeof path === "string" && path.startsWith("logs/") && LOG_NAME.test(path.slice("logs/".length));
}

/** True for a path that a change of a book may have: its own files, aircraft and flights. */
export function isTextPath(path: unknown): path is string {
  if (typeof path !== "string") return false;
  if (OWN_FILES.includes(path)) return true;
  const name = TEXT_FILE.exec(path)?.[1];
  return name !== undefined && !name.startsWith(".") && !/\p{Cc}/u.test(name);
}

function decoded(name: string): string | null {
  try {
    return decodeURIComponent(name);
  } catch {
    return null;
  }
}
