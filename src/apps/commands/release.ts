import { join } from "node:path";
import { EXIT } from "./exitCodes.ts";
import { Failure } from "./failure.ts";
import type { Io } from "./io.ts";
import { inputSentences } from "./sentences.ts";

/** Text of a file of the installed package, e.g. "schemas/aircraft.schema.json". */
export function packageText(io: Io, name: string): string {
  const bytes = io.files.read(join(io.packageFolder, name));
  if (bytes === null) throw new Failure(EXIT.bug, inputSentences.packageIncomplete(name));
  return new TextDecoder().decode(bytes);
}

/** The release of this installation, e.g. "0.1.0". */
export function releaseOf(io: Io): string {
  const { version } = JSON.parse(packageText(io, "package.json")) as { version: string };
  return version;
}
