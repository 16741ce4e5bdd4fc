// Bundles the command (split, so that each command's code loads on demand; the commands of every flight in one part
// each) and the library (packages external), then writes the library's types. Run from anywhere: node scripts/build.mjs
import { execFileSync } from "node:child_process";
import { chmodSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { pageText } from "./pageFile.mjs";
import { throughDoors } from "./throughDoors.mjs";
import { withCommand } from "./withCommand.mjs";

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
  // The lock makes, stats and removes one folder at a time: it needs no queue of file calls.
  alias: { "graceful-fs": "node:fs" },
};

// A CommonJS package in the bundle asks for Node's modules by require, which ES modules lack.
const REQUIRE_SHIM =
  'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);';

rmSync(dist, { recursive: true, force: true });

/** Each command's code loads on demand, in parts that the commands share. */
async function buildCommand(name, plugins, others = {}) {
  await build({
    ...common,
    entryPoints: { [name]: "src/apps/commands/main.ts", ...others },
    outdir: "dist",
    splitting: true,
    minify: true,
    keepNames: true,
    chunkNames: "parts/[name]-[hash]",
    plugins: [...plugins, throughDoors()],
    banner: { js: REQUIRE_SHIM },
  });
}

// What is called after every flight comes in one part: loading thirty small ones takes longer than running them.
const IN_ONE_PART = ["add", "check", "timer"];
await buildCommand("any", [], { checkWorker: "src/apps/commands/checkWorker.ts" });
for (const name of IN_ONE_PART) await buildCommand(name, [withCommand(name)]);

const START = `#!/usr/bin/env node
const [, , command] = process.argv;
await import(${JSON.stringify(IN_ONE_PART)}.includes(command) ? "./" + command + ".js" : "./any.js");
`;
writeFileSync(join(dist, "tallywatt.js"), START);
chmodSync(join(dist, "tallywatt.js"), 0o755);

await build({ ...common, entryPoints: ["src/index.ts"], outfile: "dist/index.js", packages: "external" });

const compiler = join(
  dirname(createRequire(import.meta.url).resolve("typescript/package.json")),
  "bin",
  "tsc",
);
execFileSync(process.execPath, [compiler, "-p", "tsconfig.build.json"], { cwd: root, stdio: "inherit" });

writeFileSync(join(dist, "page.html"), await pageText());
