import { join } from "node:path";
import { INDEX_FILE } from "../../season/logbook/index.ts";
import type { FileSystem } from "../disk/index.ts";
import { sha256Of, writeQuickly } from "../disk/index.ts";

const FLIGHTS = "flights";
/**
 * First line of the file: format (counted up with every change of what follows: an index of another kind
 * is rebuilt), digest of the flights' names and sizes, digest of all that follows.
 */
const FRAME = /^tallywatt\/index 2 ([0-9a-f]{64}) ([0-9a-f]{64})$/;

/**
 * The text of the index when it fits the folder, else null: its checksum holds, the flights' files have
 * the names and sizes they had when it was written, and none of them was changed after it.
 */
export function fittingIndex(fileSystem: FileSystem, folder: string): string | null {
  const path = join(folder, INDEX_FILE);
  const read = fileSystem.read(path);
  if (read === null) return null;
  const bytes = Buffer.from(read.buffer, read.byteOffset, read.byteLength);
  const end = bytes.indexOf("\n");
  const frame = FRAME.exec(bytes.toString("latin1", 0, Math.max(end, 0)));
  const body = bytes.subarray(end + 1);
  if (frame === null || sha256Of(body) !== frame[2]) return null;
  const modifiedMs = fileSystem.state(path)?.modifiedMs ?? Number.NEGATIVE_INFINITY;
  return stampOf(fileSystem, folder, modifiedMs) === frame[1] ? body.toString("latin1") : null;
}

/** Writes the index of the folder as it is now. It may be lost: then readers rebuild it. */
export function writeIndex(fileSystem: FileSystem, folder: string, index: string): void {
  const body = Buffer.from(index, "latin1");
  const stamp = stampOf(fileSystem, folder, Number.POSITIVE_INFINITY);
  const frame = Buffer.from(`tallywatt/index 2 ${stamp} ${sha256Of(body)}\n`, "latin1");
  writeQuickly(fileSystem, join(folder, INDEX_FILE), Buffer.concat([frame, body]));
}

/** Digest of names and sizes of the flights' files; null when one was changed after `latestMs`. */
function stampOf(fileSystem: FileSystem, folder: string, latestMs: number): string | null {
  const lines: string[] = [];
  for (const name of fileSystem.list(join(folder, FLIGHTS))) {
    if (!name.endsWith(".json")) continue;
    const state = fileSystem.state(join(folder, FLIGHTS, name));
    if (state === null || state.modifiedMs > latestMs) return null;
    lines.push(`${name} ${state.size}`);
  }
  return sha256Of(lines.join("\n"));
}
