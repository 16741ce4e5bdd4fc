import type { Io } from "../../src/apps/commands/io.ts";
import { runCommandLine } from "../../src/apps/commands/run.ts";
import { nodeFileSystem } from "../../src/apps/disk/index.ts";
import { PACKAGE_FOLDER } from "../commands/inMemory.ts";

/** Runs a command on this machine's disk with a book in a folder; gives its standard output, throws unless it ends with 0. */
export async function commandOn(book: string, workFolder: string, words: readonly string[]): Promise<string> {
  const [out, err]: [string[], string[]] = [[], []];
  const io: Io = {
    out: { write: (part) => void out.push(part) },
    err: { write: (part) => void err.push(part) },
    outIsTerminal: false,
    errIsTerminal: false,
    env: { TALLYWATT_BOOK: book },
    workFolder,
    packageFolder: PACKAGE_FOLDER,
    files: nodeFileSystem,
    readInput: async () => new Uint8Array(),
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    interrupted: async () => {},
  };
  if ((await runCommandLine(words, io)) !== 0) throw new Error(err.join(""));
  return out.join("");
}
