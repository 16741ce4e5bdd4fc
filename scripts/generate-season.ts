// Writes the demo season (fixtures/tern) and the golden cases (test/golden) anew, byte for byte the same each time.
// Run: node scripts/run-typescript.mjs scripts/generate-season.ts
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { goldenFiles, seasonFiles } from "../test/generator/index.ts";

const root = resolve(import.meta.dirname, "..");

function writeAll(folder: string, files: ReadonlyMap<string, Uint8Array>): void {
  let bytes = 0;
  for (const [name, content] of files) {
    const path = resolve(root, folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    bytes += content.length;
  }
  console.log(`${folder}: ${files.size} files, ${bytes} bytes`);
}

writeAll("fixtures/tern", seasonFiles());
writeAll("test/golden", goldenFiles());
