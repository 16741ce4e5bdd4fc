import { beforeAll, describe, expect, it } from "vitest";
import { CASES } from "./cases.ts";
import { measuresOfFlight, SCORED, type Scored, scoresOf } from "./identifyFlight.ts";
import { randomFlight } from "./randomFlight.ts";
import { type Score, type ScoreRow, scoreRow } from "./scoreTable.ts";

/** The full table of 200 flights a case is printed by the benchmark; this is its guard. */
const FIRST_SEED = 1001;
const FLIGHTS = 32;

/** Most median error and most median half-width, in the unit of the score. */
const REACH: Readonly<Record<Scored, readonly [error: number, halfWidth: number]>> = {
  "pack resistance 1 s, %": [2, 8],
  "pack resistance 10 s, %": [2, 8],
  "time constant, %": [5, 15],
  "rise per A2, %": [3, 10],
  "hot-day peak, degC": [2, 5],
  "power coefficient, %": [2, 6],
  "motor efficiency, %": [2, 6],
};

describe(`identification of ${FLIGHTS} random flights with random departures (seeds from ${FIRST_SEED})`, () => {
  const rows = new Map<Scored, ScoreRow>();

  beforeAll(() => {
    const scores = new Map<Scored, (Score | null)[]>(SCORED.map((scored) => [scored, []]));
    for (let seed = FIRST_SEED; seed < FIRST_SEED + FLIGHTS; seed++) {
      const flight = randomFlight(seed, CASES["random choice"]!(seed));
      for (const [scored, score] of Object.entries(scoresOf(flight, measuresOfFlight(flight)))) {
        scores.get(scored as Scored)!.push(score);
      }
    }
    for (const [scored, list] of scores) rows.set(scored, scoreRow(list));
  });

  it.each(SCORED)("%s: within reach, covered and given", (scored) => {
    const row = rows.get(scored)!;
    console.log(scored, row);
    expect(row.medianError).toBeLessThanOrEqual(REACH[scored][0]);
    expect(row.medianHalfWidth).toBeLessThanOrEqual(REACH[scored][1]);
    expect(row.cover).toBeGreaterThanOrEqual(0.9);
    expect(row.shareGiven).toBeGreaterThanOrEqual(0.9);
  });
});
