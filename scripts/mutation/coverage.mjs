// Branch coverage of the folders named (all when none is) by their own tests; fails under 95 %.
// Run: npm run coverage -- reading recording
import { spawnSync } from "node:child_process";
import { resolve } from "node:path";
import { FOLDERS, folderNamed } from "./folders.mjs";

const root = resolve(import.meta.dirname, "../..");
const named = process.argv.slice(2);
for (const name of named.length > 0 ? named : Object.keys(FOLDERS)) {
  folderNamed(name);
  console.log(`\n${name}`);
  const { status } = spawnSync(
    process.execPath,
    [
      resolve(root, "node_modules/vitest/vitest.mjs"),
      ...["run", "--root", root, "--config", resolve(import.meta.dirname, "vitest.config.mjs"), "--coverage"],
      ...["--reporter", "dot"],
    ],
    { cwd: root, stdio: "inherit", env: { ...process.env, MUTATION_FOLDER: name } },
  );
  if (status !== 0) process.exitCode = 1;
}
