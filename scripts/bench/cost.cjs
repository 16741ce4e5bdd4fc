// Preloaded into every process of the bench: what it cost, written to descriptor 3 as it ends.
const { writeSync } = require("node:fs");
const { isMainThread } = require("node:worker_threads");

if (isMainThread)
  process.on("exit", () => {
    const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
    writeSync(3, JSON.stringify({ cpuMs: (userCPUTime + systemCPUTime) / 1000, peakMb: maxRSS / 1024 }));
  });
