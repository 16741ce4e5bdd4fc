import type { FileChange } from "../../season/logbook/index.ts";
import type { ChangeMessage } from "./bookMessages.ts";
import { isLogPath, isTextPath } from "./bookPaths.ts";
import { Refusal } from "./refusal.ts";

/** The change in a body, every path of it one of a book. Throws a Refusal at anything else. */
export function changeOf(body: Uint8Array): ChangeMessage {
  const { stamp, files, index, dropLogs } = parsed(body);
  if (typeof stamp !== "string" || !(index === null || isIndex(index))) throw wrong("stamp or index");
  if (!Array.isArray(files) || !files.every(isFileChange)) throw wrong("files");
  if (!Array.isArray(dropLogs) || !dropLogs.every(isLogPath)) throw wrong("logs to drop");
  return { stamp, files: files.map(({ path, text }) => ({ path, text })), index, dropLogs };
}

/** An index is plain ASCII: it is kept byte for byte. */
function isIndex(index: unknown): index is string {
  return typeof index === "string" && /^[\t\n\x20-\x7e]*$/.test(index);
}

function isFileChange(value: unknown): value is FileChange {
  if (typeof value !== "object" || value === null) return false;
  const { path, text } = value as Partial<FileChange>;
  return isTextPath(path) && (text === null || typeof text === "string");
}

function parsed(body: Uint8Array): Partial<Record<keyof ChangeMessage, unknown>> {
  try {
    const value: unknown = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(body));
    if (typeof value === "object" && value !== null) return value;
  } catch {
    // Told below.
  }
  throw wrong("JSON");
}

function wrong(what: string): Refusal {
  return new Refusal(400, `this is no change of a logbook: ${what}`);
}
