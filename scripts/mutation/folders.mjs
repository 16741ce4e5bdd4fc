/** The folders whose tests are themselves tested, and the tests that answer for each. */
export const FOLDERS = {
  statistics: {
    source: "src/base/statistics",
    // Without the 306 tolerance factors: seconds for each mutant.
    tests: [
      "test/base/statistics/**/*.test.ts",
      "test/published/{smallStatistics,trendTests,uncertainty}.test.ts",
      "test/published/{linearRegressionStrd,exponentialRiseStrd}.test.ts",
    ],
  },
  timer: { source: "src/season/timer", tests: ["test/season/timer/**/*.test.ts"] },
  reading: { source: "src/log/reading", tests: ["test/log/reading/**/*.test.ts"] },
  recording: { source: "src/log/recording", tests: ["test/log/recording/**/*.test.ts"] },
  analysis: {
    source: "src/flight/analysis",
    tests: ["test/flight/analysis/**/*.test.ts", "test/identify/**/*.test.ts", "test/golden/*.test.ts"],
  },
  // The tests that start other processes see the built program, not the mutated source.
  folderBook: {
    source: "src/apps/folderBook",
    tests: ["test/folderBook/{bookCommands,damage,folderStore,golden}.test.ts"],
  },
};

export function folderNamed(name) {
  const folder = FOLDERS[name];
  if (folder !== undefined) return folder;
  throw new Error(`name one of: ${Object.keys(FOLDERS).join(", ")}; not ${JSON.stringify(name)}`);
}
