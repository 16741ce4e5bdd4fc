import {
  planTable,
  scoredFromLog,
  scoredSwaps,
  scoredWithoutLog,
  seedsFrom,
} from "../test/flight/prediction/scoredPlans.ts";

// Predicted intervals against the simulator: share covered, half-width, error over random aircraft.
// Arguments: aircraft a case, first seed.
const seeds = seedsFrom(Number(process.argv[3] ?? 82_001), Number(process.argv[2] ?? 400));

console.log(planTable("From the aircraft file and published ranges alone", seeds, scoredWithoutLog(seeds)));
console.log(planTable("\nThe next flight from one log", seeds, scoredFromLog(seeds)));
console.log(planTable("\nAnother propeller from one log of the first", seeds, scoredSwaps(seeds)));
