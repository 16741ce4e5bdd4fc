#!/usr/bin/env node
import { existsSync } from "node:fs";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { nodeFileSystem } from "../disk/index.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { programName } from "./programName.ts";
import { runCommandLine } from "./run.ts";

/** The bundle lies in dist/, one folder below the package. */
const packageFolder = join(dirname(fileURLToPath(import.meta.url)), "..");

const io: Io = {
  out: process.stdout,
  err: process.stderr,
  outIsTerminal: process.stdout.isTTY === true,
  errIsTerminal: process.stderr.isTTY === true,
  program: programName(process.env.PATH ?? "", delimiter, existsSync),
  env: process.env,
  workFolder: process.cwd(),
  packageFolder,
  files: nodeFileSystem,
  checkWorker: fileURLToPath(new URL("./checkWorker.js", import.meta.url)),
  readInput: readStandardInput,
  pause: () => new Promise((resolve) => setImmediate(resolve)),
  interrupted,
};

function endAtOnce(): void {
  process.exit(EXIT.interrupted);
}

function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    process.removeListener("SIGINT", endAtOnce);
    for (const signal of ["SIGINT", "SIGTERM"] as const) {
      process.once(signal, () => {
        process.once(signal, endAtOnce);
        resolve();
      });
    }
  });
}

async function readStandardInput(): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

/** A reader that has seen enough (`| head`) ends us quietly; a full disk behind standard output does not. */
function endOnBrokenOutput(error: NodeJS.ErrnoException): void {
  if (error.code === "EPIPE") process.exit(EXIT.done);
  process.stderr.write(`Standard output cannot be written: ${error.code ?? error.message}.\n`);
  process.exit(EXIT.cannotWrite);
}

process.stdout.on("error", endOnBrokenOutput);
process.stderr.on("error", () => process.exit(EXIT.cannotWrite));
process.once("SIGINT", endAtOnce);

runCommandLine(process.argv.slice(2), io).then((exit: ExitCode) => {
  process.exitCode = exit;
});
