import { isAbsolute, join, resolve } from "node:path";
import { usageFailure } from "../failure.ts";
import type { Io } from "../io.ts";
import { logbookSentences } from "./sentences.ts";

const NAME = "tallywatt";

/**
 * Where the logbook lies: the folder given, else TALLYWATT_BOOK, else the user's data folder of the system
 * (XDG Base Directory Specification 0.8 on Linux; a relative path in its variable is ignored).
 */
export function bookFolder(
  given: string | null,
  io: Io,
  platform: NodeJS.Platform = process.platform,
): string {
  const named = given ?? nonEmpty(io.env.TALLYWATT_BOOK);
  if (named !== null) return resolve(io.workFolder, named);
  const folder = dataFolder(io.env, platform);
  if (folder === null) throw usageFailure(logbookSentences.noHome());
  return join(folder, NAME);
}

function dataFolder(env: Io["env"], platform: NodeJS.Platform): string | null {
  const home = nonEmpty(env.HOME);
  if (platform === "win32") {
    const profile = nonEmpty(env.USERPROFILE);
    return nonEmpty(env.LOCALAPPDATA) ?? (profile === null ? null : join(profile, "AppData", "Local"));
  }
  if (platform === "darwin") return home === null ? null : join(home, "Library", "Application Support");
  const stated = nonEmpty(env.XDG_DATA_HOME);
  if (stated !== null && isAbsolute(stated)) return stated;
  return home === null ? null : join(home, ".local", "share");
}

function nonEmpty(text: string | undefined): string | null {
  return text === undefined || text === "" ? null : text;
}
