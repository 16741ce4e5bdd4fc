import { LOGGED_FLIGHTS, SPREADS, scorePilots } from "../test/season/timer/simulatedPilots.ts";

const pilots = Number(process.argv[2] ?? 4000);
const seed = 20_261;
console.log(`simulated pilots: ${pilots} a cell, 40 later flights each, seed ${seed}`);
console.log("spread  logged  kept    cautious promise kept  median length against a pilot who knows");
for (const logged of LOGGED_FLIGHTS) {
  const scores = SPREADS.map((spread, index) => scorePilots(spread, logged, pilots, seed + index));
  for (const { spread, kept, cautiousKept, medianLength } of scores) {
    console.log(line(`${(100 * spread).toFixed(0)} %`, logged, kept, cautiousKept, medianLength));
  }
  const average = (pick: (score: (typeof scores)[number]) => number): number =>
    scores.reduce((sum, score) => sum + pick(score), 0) / scores.length;
  const lengths = scores.map((score) => score.medianLength).sort((one, other) => one - other);
  console.log(
    line(
      "all",
      logged,
      average((score) => score.kept),
      average((score) => score.cautiousKept),
      lengths[3] ?? Number.NaN,
    ),
  );
}

function line(spread: string, logged: number, kept: number, cautious: number, length: number): string {
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`.padStart(8);
  return `${spread.padEnd(7)} ${String(logged).padEnd(7)}${percent(kept)} ${percent(cautious).padEnd(22)} ${percent(length)}`;
}
