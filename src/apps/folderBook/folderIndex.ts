import { join } from "node:path";
import { type FileChange, FLIGHT_FOLDER, frontLength, INDEX_FILE } from "../../season/logbook/index.ts";
import type { FileState, FileSystem } from "../disk/index.ts";
import { sha256Of, writeQuickly } from "../disk/index.ts";

/** No first line is longer. */
const FRAME_BYTES = 400;
/**
 * First line of the file: format (counted up with every change of what follows: an index of another kind is rebuilt),
 * digest of the flights' names and sizes, then length and digest of the front and of the rest of what follows.
 */
const FRAME = /^tallywatt\/index 4 ([0-9a-f]{64}) (\d+) ([0-9a-f]{64}) (\d+) ([0-9a-f]{64})$/;

export type IndexPart = "front" | "whole" | "asWritten";

/** The index of a folder as it was found, and the states of the flights' files that it is held against. */
export class FolderIndex {
  readonly #fileSystem: FileSystem;
  readonly #folder: string;
  readonly #names: readonly string[];
  #states: FlightStates | null = null;

  /** @param names the flights' files */
  constructor(fileSystem: FileSystem, folder: string, names: readonly string[]) {
    this.#fileSystem = fileSystem;
    this.#folder = folder;
    this.#names = names;
  }

  /**
   * Its text, or that of its front alone, when it fits the folder, else null: its checksum holds, the flights' files
   * have the names and sizes they had when it was written, and none of them was changed after it. As written: only
   * its checksum holds.
   */
  text(what: IndexPart): string | null {
    const path = join(this.#folder, INDEX_FILE);
    const file = this.#fileSystem.parts(path);
    if (file === null) return null;
    const first = latin1(file.subarray(0, Math.min(FRAME_BYTES, file.length)));
    const end = first.indexOf("\n");
    const frame = FRAME.exec(first.slice(0, Math.max(end, 0)));
    if (frame === null) return null;
    const [, stamp, frontLength, frontDigest, restLength, restDigest] = frame;
    const frontEnd = end + 1 + Number(frontLength);
    if (file.length !== frontEnd + Number(restLength)) return null;
    const isFront = what === "front";
    const bytes = file.subarray(end + 1, isFront ? frontEnd : file.length);
    const parts = isFront
      ? [bytes]
      : [bytes.subarray(0, frontEnd - end - 1), bytes.subarray(frontEnd - end - 1)];
    const text = textOf(bytes, parts, isFront ? `${frontDigest}` : `${frontDigest} ${restDigest}`);
    if (text === null || what === "asWritten") return text;
    const modifiedMs = this.#fileSystem.state(path)?.modifiedMs ?? Number.NEGATIVE_INFINITY;
    this.#states ??= statesOf(this.#fileSystem, this.#folder, this.#names);
    return isFitting(this.#states, stamp ?? "", modifiedMs) ? text : null;
  }

  /**
   * Writes the index after these changes were made. It may be lost: then readers rebuild it. Where one was found, the
   * other flights' files count as they were when the change was planned: one that was changed by hand since does not
   * fit it.
   */
  write(index: string, changes: readonly FileChange[]): void {
    const states = this.#states ?? statesOf(this.#fileSystem, this.#folder, this.#names);
    const file = Buffer.allocUnsafe(FRAME_BYTES + index.length);
    file.write(index, FRAME_BYTES, "latin1");
    const frontEnd = FRAME_BYTES + frontLength(index);
    const parts = [file.subarray(FRAME_BYTES, frontEnd), file.subarray(frontEnd)];
    const lengths = parts.map((part) => `${part.length} ${sha256Of(part)}`).join(" ");
    const frame = `tallywatt/index 4 ${stampOf(sizesAfter(states, changes))} ${lengths}\n`;
    const start = FRAME_BYTES - frame.length;
    file.write(frame, start, "latin1");
    writeQuickly(this.#fileSystem, join(this.#folder, INDEX_FILE), file.subarray(start));
  }
}

/** By the name of the file; null for one that is not there any more. */
type FlightStates = ReadonlyMap<string, FileState | null>;

function statesOf(fileSystem: FileSystem, folder: string, names: readonly string[]): FlightStates {
  const below = join(folder, FLIGHT_FOLDER);
  return new Map(names.map((name) => [name, fileSystem.state(below + name)]));
}

function isFitting(states: FlightStates, stamp: string, latestMs: number): boolean {
  const sizes = new Map<string, number>();
  for (const [name, state] of states) {
    if (state === null || state.modifiedMs > latestMs) return false;
    sizes.set(name, state.size);
  }
  return stampOf(sizes) === stamp;
}

function sizesAfter(states: FlightStates, changes: readonly FileChange[]): ReadonlyMap<string, number> {
  const sizes = new Map([...states].flatMap(([name, state]) => (state === null ? [] : [[name, state.size]])));
  for (const { path, text } of changes) {
    if (!path.startsWith(FLIGHT_FOLDER)) continue;
    const name = path.slice(FLIGHT_FOLDER.length);
    if (text === null) sizes.delete(name);
    else sizes.set(name, Buffer.byteLength(text));
  }
  return sizes;
}

/** Digest of names and sizes of the flights' files. */
function stampOf(sizes: ReadonlyMap<string, number>): string {
  const names = [...sizes.keys()].sort();
  return sha256Of(names.map((name) => `${name} ${sizes.get(name)}`).join("\n"));
}

/** The last text whose digest held: a change reads again what a look before it read. */
let latest: { readonly digests: string; readonly bytes: Uint8Array; readonly text: string } | null = null;

/** Null where a digest of the parts does not hold. @param bytes good until the next call */
function textOf(bytes: Uint8Array, parts: readonly Uint8Array[], digests: string): string | null {
  if (latest?.digests === digests && Buffer.compare(bytes, latest.bytes) === 0) return latest.text;
  if (parts.map(sha256Of).join(" ") !== digests) return null;
  latest = { digests, bytes: bytes.slice(), text: latin1(bytes) };
  return latest.text;
}

function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
}
