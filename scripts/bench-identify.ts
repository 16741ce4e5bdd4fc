import { CASES } from "../test/identify/cases.ts";
import { identifyFlight, SCORED, type Scored, scoresOf } from "../test/identify/identifyFlight.ts";
import { randomFlight } from "../test/identify/randomFlight.ts";
import { type Score, scoreRow } from "../test/identify/scoreTable.ts";

// 200 seeded flights per case against their truth: median error, cover, median half-width, share given.
const flights = Number(process.argv[2] ?? 200);
const only = process.argv[3];

function number(value: number, decimals: number): string {
  return value.toFixed(decimals).padStart(8);
}

for (const [name, optionsOf] of Object.entries(CASES)) {
  if (only !== undefined && only !== name) continue;
  const scores = new Map<Scored, (Score | null)[]>(SCORED.map((scored) => [scored, []]));
  let spentMs = 0;
  for (let seed = 1; seed <= flights; seed++) {
    const flight = randomFlight(seed, optionsOf(seed));
    const startMs = performance.now();
    const identified = identifyFlight(flight);
    spentMs += performance.now() - startMs;
    for (const [scored, score] of Object.entries(scoresOf(flight, identified))) {
      scores.get(scored as Scored)!.push(score);
    }
  }
  console.log(`\n${name}: seeds 1 to ${flights}, ${(spentMs / flights).toFixed(1)} ms each`);
  console.log(`${"".padEnd(26)}median e   cover %   half U   given %   flights`);
  for (const [scored, list] of scores) {
    if (list.length === 0) continue;
    const row = scoreRow(list);
    console.log(
      `${scored.padEnd(26)}${number(row.medianError, 2)}${number(100 * row.cover, 1)}  ${number(row.medianHalfWidth, 2)}  ${number(100 * row.shareGiven, 1)}  ${number(row.count, 0)}`,
    );
  }
}
