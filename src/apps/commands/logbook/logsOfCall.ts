import { join, resolve } from "node:path";
import type { Io } from "../io.ts";

const LOG_ENDING = /\.(csv|tsv|txt|log)$/i;

/** A log to take, or a folder that holds none. */
export type LogToTake =
  | { readonly kind: "log"; readonly log: string }
  | { readonly kind: "emptyFolder"; readonly folder: string };

/** The logs that the operands name: a folder stands for every log in it, in the order of their names. */
export function logsOfCall(operands: readonly string[], io: Io): readonly LogToTake[] {
  const taken = operands.flatMap((operand): readonly LogToTake[] => {
    const logs = logsInFolder(operand, io);
    if (logs === null) return [{ kind: "log", log: operand }];
    if (logs.length === 0) return [{ kind: "emptyFolder", folder: operand }];
    return logs.map((log) => ({ kind: "log", log }));
  });
  const seen = new Set<string>();
  return taken.filter((one) => {
    const key = one.kind === "log" ? one.log : `${one.folder}/`;
    return !seen.has(key) && seen.add(key);
  });
}

/** The logs of a folder as the user would name them; null for what is no folder. */
export function logsInFolder(folder: string, io: Io): readonly string[] | null {
  const path = resolve(io.workFolder, folder);
  try {
    if (io.files.state(path)?.isFolder !== true) return null;
    const names = io.files.list(path).filter((name) => LOG_ENDING.test(name));
    return names.map((name) => join(folder, name));
  } catch {
    // Reading it as a log tells why it cannot be read.
    return null;
  }
}
