import { CASES } from "../test/identify/cases.ts";
import { measuresOfFlight, SCORED, type Scored, scoresOf } from "../test/identify/identifyFlight.ts";
import { randomFlight } from "../test/identify/randomFlight.ts";
import { type Score, scoreRow } from "../test/identify/scoreTable.ts";

// 200 seeded flights per case against their truth: median error, cover, median half-width, share given.
// Arguments: flights a case, first seed, one case. The estimators were tuned on seeds below 1000 only.
const flights = Number(process.argv[2] ?? 200);
const firstSeed = Number(process.argv[3] ?? 30_001);
const only = process.argv[4];

function number(value: number, decimals: number): string {
  return value.toFixed(decimals).padStart(8);
}

for (const [name, optionsOf] of Object.entries(CASES)) {
  if (only !== undefined && only !== name) continue;
  const scores = new Map<Scored, (Score | null)[]>(SCORED.map((scored) => [scored, []]));
  let spentMs = 0;
  for (let seed = firstSeed; seed < firstSeed + flights; seed++) {
    const flight = randomFlight(seed, optionsOf(seed));
    const startMs = performance.now();
    const measures = measuresOfFlight(flight);
    spentMs += performance.now() - startMs;
    for (const [scored, score] of Object.entries(scoresOf(flight, measures))) {
      scores.get(scored as Scored)!.push(score);
    }
  }
  console.log(`\n${name}: seeds from ${firstSeed}, whole analysis ${(spentMs / flights).toFixed(1)} ms each`);
  console.log(`${"".padEnd(26)}median e   cover %   half U   given %   flights`);
  for (const [scored, list] of scores) {
    if (list.length === 0) continue;
    const row = scoreRow(list);
    console.log(
      `${scored.padEnd(26)}${number(row.medianError, 2)}${number(100 * row.cover, 1)}  ${number(row.medianHalfWidth, 2)}  ${number(100 * row.shareGiven, 1)}  ${number(row.count, 0)}`,
    );
  }
}
