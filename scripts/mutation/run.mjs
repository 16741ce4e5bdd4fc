// Mutation testing of one folder after the other with only its own tests. What was found is kept in .tmp/mutation, so
// a second run does only what changed, and single files add up. Of large folders a share of the mutants is drawn.
// Run: npm run mutation -- statistics timer/setTimer.ts     (all folders when none is named)
// Writes the survivors by kind into docs/mutation/FOLDER.txt.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { resolve } from "node:path";
import { Stryker } from "@stryker-mutator/core";
import { FOLDERS, folderNamed } from "./folders.mjs";
import { survivorText } from "./survivors.mjs";

const root = resolve(import.meta.dirname, "../..");
const scratch = resolve(root, ".tmp/mutation");
const named = process.argv.slice(2);
mkdirSync(scratch, { recursive: true });
mkdirSync(resolve(root, "docs/mutation"), { recursive: true });

for (const each of named.length > 0 ? named : Object.keys(FOLDERS)) {
  const [name, ...files] = each.split("/");
  const { source, share } = folderNamed(name);
  process.env.MUTATION_FOLDER = name;
  process.env.MUTATION_SHARE = share;
  const known = resolve(scratch, `${name}.json`);
  await new Stryker({
    mutate: [
      `${source}/${files.join("/") || "**/*.ts"}`,
      `!${source}/**/{sentences,*Sentences,index,contract}.ts`,
    ],
    testRunner: "vitest",
    vitest: { configFile: "scripts/mutation/vitest.config.mjs", related: false },
    plugins: ["@stryker-mutator/vitest-runner", resolve(import.meta.dirname, "drawnMutants.mjs")],
    checkers: share < 1 ? ["drawn"] : [],
    coverageAnalysis: "perTest",
    // A module's constants are made once per process, before a mutant can be switched on.
    ignoreStatic: true,
    incremental: true,
    incrementalFile: known,
    reporters: ["progress-append-only"],
    tempDirName: ".tmp/stryker",
    // TypeScript 7 has no interface for the rewriting of a tsconfig; the tests need none.
    ignorePatterns: ["dist", "coverage", "demo-reports", ".tmp", "tsconfig*.json"],
    concurrency: Number(process.env.MUTATION_WORKERS ?? cpus().length),
    // Long enough on a busy machine: a mutant that runs into it counts as killed.
    timeoutMS: 15_000,
    dryRunTimeoutMinutes: 60,
    allowEmpty: true,
  }).runMutationTest();
  writeFileSync(
    resolve(root, `docs/mutation/${name}.txt`),
    survivorText(name, JSON.parse(readFileSync(known, "utf8"))),
  );
}
