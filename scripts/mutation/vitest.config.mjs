// Only the tests of the folder that is being mutated or covered: MUTATION_FOLDER names it.
import { defineConfig } from "vitest/config";
import { folderNamed } from "./folders.mjs";

const { source, tests, slow } = folderNamed(process.env.MUTATION_FOLDER);
const isCoverage = process.argv.includes("--coverage");

export default defineConfig({
  test: {
    include: isCoverage ? [...tests, ...slow] : tests,
    testTimeout: 300_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    coverage: {
      provider: "v8",
      include: [`${source}/**/*.ts`],
      reporter: ["text"],
      reportsDirectory: ".tmp/coverage",
      thresholds: { branches: 95 },
    },
  },
});
