// Bundles the command (split, so that each command's code loads on demand) and the library (packages external),
// then writes the library's types. Run from anywhere: node scripts/build.mjs
import { execFileSync } from "node:child_process";
import { chmodSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { pageText } from "./pageFile.mjs";
import { throughDoors } from "./throughDoors.mjs";

const root = join(import.meta.dirname, "..");
const dist = join(root, "dist");

const common = {
  absWorkingDir: root,
  bundle: true,
  format: "esm",
  platform: "node",
  // The ES module of a package where it has one: bundled UMD (jsonc-parser) cannot find its parts.
  mainFields: ["module", "main"],
  target: "node20",
  logLevel: "warning",
  legalComments: "none",
};

// A CommonJS package in the bundle asks for Node's modules by require, which ES modules lack.
const REQUIRE_SHIM =
  'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);';

rmSync(dist, { recursive: true, force: true });

await build({
  ...common,
  entryPoints: { tallywatt: "src/apps/commands/main.ts", checkWorker: "src/apps/commands/checkWorker.ts" },
  outdir: "dist",
  splitting: true,
  minify: true,
  keepNames: true,
  chunkNames: "parts/[name]-[hash]",
  plugins: [throughDoors()],
  banner: { js: REQUIRE_SHIM },
});
chmodSync(join(dist, "tallywatt.js"), 0o755);

await build({ ...common, entryPoints: ["src/index.ts"], outfile: "dist/index.js", packages: "external" });

const compiler = join(
  dirname(createRequire(import.meta.url).resolve("typescript/package.json")),
  "bin",
  "tsc",
);
execFileSync(process.execPath, [compiler, "-p", "tsconfig.build.json"], { cwd: root, stdio: "inherit" });

writeFileSync(join(dist, "page.html"), await pageText());
