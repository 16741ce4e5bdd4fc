/**
 * The folders whose tests are themselves tested, and the tests that answer for each. `slow`: tests of seconds, which
 * count for branches but would be run for every mutant they reach. `share`: the part of the mutants that is drawn.
 */
export const FOLDERS = {
  statistics: {
    source: "src/base/statistics",
    tests: [
      "test/base/statistics/**/*.test.ts",
      "test/published/{smallStatistics,trendTests,uncertainty}.test.ts",
      "test/published/{linearRegressionStrd,exponentialRiseStrd}.test.ts",
    ],
    slow: [],
    share: 1,
  },
  timer: {
    source: "src/season/timer",
    tests: ["test/season/timer/{edges,limits,setTimer,terms}.test.ts"],
    slow: ["test/season/timer/{chargeLimit,loggedPilots}.test.ts"],
    share: 0.25,
  },
  reading: {
    source: "src/log/reading",
    tests: ["test/log/reading/!(pollution|cleanRows|properties|corpus|flights|styles).test.ts"],
    slow: [
      "test/log/reading/{pollution,cleanRows,properties,corpus,flights,styles}.test.ts",
      "test/soak/limits.test.ts",
    ],
    share: 0.015,
  },
  recording: {
    source: "src/log/recording",
    tests: ["test/log/recording/**/*.test.ts"],
    slow: [],
    share: 0.05,
  },
  analysis: {
    source: "src/flight/analysis",
    tests: [
      "test/flight/analysis/!(flights|simulatedFlights|sharedFlights|weakestPart|doubts|missing).test.ts",
      "test/identify/identification.test.ts",
    ],
    slow: [
      "test/flight/analysis/{flights,simulatedFlights,sharedFlights,weakestPart,doubts,missing}.test.ts",
      "test/flight/*.test.ts",
      "test/identify/{openFlights,wrongSettings}.test.ts",
      "test/golden/*.test.ts",
      "test/truth/{coverage,estimatedCurrent,flightTime,season}.test.ts",
      "test/log/reading/packsInSeries.test.ts",
    ],
    share: 0.012,
  },
  // The tests that start other processes see the built program, not the mutated source.
  folderBook: {
    source: "src/apps/folderBook",
    tests: ["test/folderBook/{folderStore,golden,oddFolders}.test.ts"],
    slow: ["test/folderBook/{bookCommands,damage}.test.ts"],
    share: 0.5,
  },
};

export function folderNamed(name) {
  const folder = FOLDERS[name];
  if (folder !== undefined) return folder;
  throw new Error(`name one of: ${Object.keys(FOLDERS).join(", ")}; not ${JSON.stringify(name)}`);
}
