import type { Io } from "../../src/apps/commands/io.ts";
import { nodeFileSystem } from "../../src/apps/disk/index.ts";
import { PACKAGE_FOLDER } from "../commands/inMemory.ts";

/** A command's surroundings on this machine's disk: a work folder, what was said, no terminal and no input. */
export function nodeIo(
  workFolder: string,
  env: Io["env"] = {},
): { readonly io: Io; readonly out: string[]; readonly err: string[] } {
  const [out, err]: [string[], string[]] = [[], []];
  const io: Io = {
    out: { write: (part) => void out.push(part) },
    err: { write: (part) => void err.push(part) },
    outIsTerminal: false,
    errIsTerminal: false,
    env,
    workFolder,
    packageFolder: PACKAGE_FOLDER,
    files: nodeFileSystem,
    readInput: async () => new Uint8Array(),
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    interrupted: async () => {},
  };
  return { io, out, err };
}
