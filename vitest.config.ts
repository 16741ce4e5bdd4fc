import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // The tests share no state, so files of a worker share the loaded modules: half the time of the small suites.
    isolate: false,
  },
});
