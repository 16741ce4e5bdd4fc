// Runs a TypeScript script on Node 20: bundles it beside itself in memory-like scratch, then imports it.
// Usage: node scripts/run-typescript.mjs scripts/bench-timer.ts [arguments]
import { mkdirSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { basename, dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const [script, ...rest] = process.argv.slice(2);
if (script === undefined) throw new Error("name the script to run");
const root = resolve(import.meta.dirname, "..");
const folder = resolve(root, ".tmp");
mkdirSync(folder, { recursive: true });
const outfile = resolve(folder, `${basename(script, ".ts")}-${process.pid}.mjs`);
/** In the bundle every file keeps the folder that it stands in. */
const ownFolders = {
  name: "own-folders",
  setup({ onLoad }) {
    onLoad({ filter: /\.(?:ts|mjs)$/ }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      const contents = text.replaceAll("import.meta.dirname", JSON.stringify(dirname(path)));
      return { contents, loader: path.endsWith(".ts") ? "ts" : "js" };
    });
  },
};
await build({
  entryPoints: [script],
  outfile,
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  packages: "external",
  plugins: [ownFolders],
});
process.argv = [process.argv[0] ?? "node", script, ...rest];
try {
  await import(pathToFileURL(outfile).href);
} finally {
  rmSync(outfile, { force: true });
}
