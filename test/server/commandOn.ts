import { runCommandLine } from "../../src/apps/commands/run.ts";
import { nodeIo } from "../support/nodeIo.ts";

/** Runs a command on this machine's disk with a book in a folder; gives its standard output, throws unless it ends with 0. */
export async function commandOn(book: string, workFolder: string, words: readonly string[]): Promise<string> {
  const { io, out, err } = nodeIo(workFolder, { TALLYWATT_BOOK: book });
  if ((await runCommandLine(words, io)) !== 0) throw new Error(err.join(""));
  return out.join("");
}
