import { join } from "node:path";
import { sha256Of } from "./checksum.ts";
import type { FileSystem } from "./fileSystem.ts";
import { writeQuickly } from "./writeDurably.ts";

const NAME = "index.json";
const FLIGHTS = "flights";
const FRAME =
  /^\{"format":"tallywatt\/index","version":1,"folder":"([0-9a-f]{64})","checksum":"([0-9a-f]{64})","index":/;
const END = "}\n";

/**
 * The text of the index when it fits the folder, else null: its checksum holds, the flights' files have
 * the names and sizes they had when it was written, and none of them was changed after it.
 */
export function fittingIndex(fileSystem: FileSystem, folder: string): string | null {
  const path = join(folder, NAME);
  const bytes = fileSystem.read(path);
  if (bytes === null) return null;
  const text = new TextDecoder().decode(bytes);
  const frame = FRAME.exec(text);
  if (frame === null || !text.endsWith(END)) return null;
  const index = text.slice(frame[0].length, -END.length);
  if (sha256Of(index) !== frame[2]) return null;
  const modifiedMs = fileSystem.state(path)?.modifiedMs ?? Number.NEGATIVE_INFINITY;
  return stampOf(fileSystem, folder, modifiedMs) === frame[1] ? index : null;
}

/** Writes the index of the folder as it is now. It may be lost: then readers rebuild it. */
export function writeIndex(fileSystem: FileSystem, folder: string, index: string): void {
  const stamp = stampOf(fileSystem, folder, Number.POSITIVE_INFINITY);
  const frame = `{"format":"tallywatt/index","version":1,"folder":"${stamp}","checksum":"${sha256Of(index)}","index":`;
  writeQuickly(fileSystem, join(folder, NAME), new TextEncoder().encode(frame + index + END));
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
