import { loggedPilot } from "../test/season/timer/loggedPilots.ts";
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
  const lengths = scores.flatMap((score) => score.lengths).sort((one, other) => one - other);
  console.log(
    line(
      "all",
      logged,
      average((score) => score.kept),
      average((score) => score.cautiousKept),
      lengths[Math.floor(lengths.length / 2)] ?? Number.NaN,
    ),
  );
}

function line(spread: string, logged: number, kept: number, cautious: number, length: number): string {
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`.padStart(8);
  return `${spread.padEnd(7)} ${String(logged).padEnd(7)}${percent(kept)} ${percent(cautious).padEnd(22)} ${percent(length)}`;
}

const logged = Number(process.argv[3] ?? 0);
if (logged > 0) throughLogs(logged);

/** A few pilots whose flights are written as logs, read back, analysed and counted. */
function throughLogs(pilotsPerSpread: number): void {
  console.log(
    `\nthrough simulated logs: ${pilotsPerSpread} pilots a spread, 12 later flights each, seeds from 500`,
  );
  const scores = SPREADS.flatMap((spread, index) =>
    Array.from({ length: pilotsPerSpread }, (_, k) =>
      loggedPilot(spread, 500 + 100 * index + k, LOGGED_FLIGHTS),
    ).flat(),
  );
  for (const count of LOGGED_FLIGHTS) {
    const own = scores.filter((score) => score.count === count);
    const total = own.reduce((sum, { later }) => sum + later, 0);
    const kept = own.reduce((sum, score) => sum + score.kept, 0);
    const lengths = own.map(({ length }) => length).sort((one, other) => one - other);
    const others = own.filter(
      ({ chargeS, touchdownByS }) => (touchdownByS ?? 0) < (chargeS ?? 0) - 55,
    ).length;
    console.log(
      `${count} logged: kept ${((100 * kept) / total).toFixed(2)} % of ${total}, median length ${(100 * (lengths[Math.floor(lengths.length / 2)] ?? 0)).toFixed(1)} %, another limit binds for ${others} of ${own.length}`,
    );
  }
}
