import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join, resolve } from "node:path";

const ROOT = resolve(import.meta.dirname, "../..");

export const BUILT_COMMAND = join(ROOT, "dist", "tallywatt.js");

/** Newest change below a folder, milliseconds. */
function newest(path: string): number {
  const files = readdirSync(path, { recursive: true, encoding: "utf8" });
  return Math.max(...files.map((name) => statSync(join(path, name)).mtimeMs));
}

/** Builds unless what was built is newer than every source file. */
export function ensureBuilt(): void {
  const isFresh = existsSync(BUILT_COMMAND) && statSync(BUILT_COMMAND).mtimeMs > newest(join(ROOT, "src"));
  if (!isFresh) execFileSync(process.execPath, [join(ROOT, "scripts/build.mjs")], { cwd: ROOT });
}
