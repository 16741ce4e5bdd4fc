import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Io } from "../../src/apps/commands/io.ts";
import { runCommandLine } from "../../src/apps/commands/run.ts";
import { type Fault, MemoryDisk } from "../folderBook/memoryDisk.ts";

export const PACKAGE_FOLDER = resolve(import.meta.dirname, "../..");
export const WORK_FOLDER = "/field";

export interface Setting {
  /** Files of the work folder by name; the package's own files are read from the disk. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly isTerminal?: boolean;
  readonly fault?: Fault;
  readonly program?: string;
}

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
  /** Files of the work folder afterwards, as text. */
  readonly files: Readonly<Record<string, string>>;
}

/** Runs a command line on a machine in memory. */
export async function runInMemory(words: readonly string[], setting: Setting = {}): Promise<Ran> {
  const disk = diskOf(setting);
  const out: string[] = [];
  const err: string[] = [];
  const exit = await runCommandLine(words, ioOf(disk, out, err, setting));
  const files = [...disk.files()].map(([path, bytes]) => [path.slice(WORK_FOLDER.length + 1), text(bytes)]);
  return { exit, out: out.join(""), err: err.join(""), files: Object.fromEntries(files) };
}

function diskOf({ files = {}, fault }: Setting): MemoryDisk {
  const entries = Object.entries(files).map(
    ([name, content]) => [resolve(WORK_FOLDER, name), bytesOf(content)] as const,
  );
  return new MemoryDisk(new Map(entries), fault ?? null);
}

function ioOf(disk: MemoryDisk, out: string[], err: string[], setting: Setting): Io {
  const packaged = (path: string): boolean => path.startsWith(PACKAGE_FOLDER);
  const files = new Proxy(disk, {
    get(target, name) {
      if (name === "read") return (path: string) => (packaged(path) ? readFileSync(path) : target.read(path));
      const value: unknown = Reflect.get(target, name);
      return typeof value === "function" ? value.bind(target) : value;
    },
  });
  return {
    out: { write: (part) => void out.push(part) },
    err: { write: (part) => void err.push(part) },
    outIsTerminal: setting.isTerminal ?? false,
    errIsTerminal: setting.isTerminal ?? false,
    program: setting.program ?? "tallywatt",
    env: setting.env ?? {},
    workFolder: WORK_FOLDER,
    packageFolder: PACKAGE_FOLDER,
    files,
    readInput: async () => bytesOf(setting.input ?? ""),
    pause: async () => {},
    interrupted: async () => {},
  };
}

/** Runs a command line on a disk that stays from one command to the next. */
export async function runOnDisk(disk: MemoryDisk, words: readonly string[]): Promise<Omit<Ran, "files">> {
  const [out, err]: [string[], string[]] = [[], []];
  const exit = await runCommandLine(words, ioOf(disk, out, err, {}));
  return { exit, out: out.join(""), err: err.join("") };
}

/** The machine around a disk, for functions that need no more of it. */
export function ioOn(disk: MemoryDisk): Io {
  return ioOf(disk, [], [], {});
}

/** Every file of a disk as text, by path. */
export function textsOf(disk: MemoryDisk): Readonly<Record<string, string>> {
  return Object.fromEntries([...disk.files()].map(([path, bytes]) => [path, text(bytes)]));
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === "string" ? new TextEncoder().encode(content) : content;
}

function text(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}
