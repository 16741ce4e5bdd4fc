// Bundles the command (split, so that each command's code loads on demand) and the library (packages external),
// then writes the library's types. Run from anywhere: node scripts/build.mjs
import { execFileSync } from "node:child_process";
import { chmodSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { build } from "esbuild";

const root = join(import.meta.dirname, "..");
const dist = join(root, "dist");

const common = {
  absWorkingDir: root,
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  logLevel: "warning",
  legalComments: "none",
};
