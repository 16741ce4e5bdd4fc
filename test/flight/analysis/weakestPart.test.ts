import { describe, expect, it } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import {
  ALL_DEPARTURES,
  type LoggedChannel,
  randomFlightSpec,
  seededRandom,
  USUAL_CHANNELS,
} from "../../generator/index.ts";
import { randomFlight } from "../../identify/randomFlight.ts";

const FIRST_SEED = 5001;
const FLIGHTS = 12;
const cellsOf = (seed: number) => randomFlightSpec(seed).aircraft.pack.cells;

/** A minute in the air with every cell logged, each column with a gain of its own within the sensors' accuracy. */
function cellsOfFlight(seed: number, weights: readonly number[] | null, noiseOfFirstV = 0) {
  const cells: LoggedChannel[] = Array.from(
    { length: cellsOf(seed) },
    (_, cell) => `cellVoltage${cell + 1}` as const,
  );
  const { recording, facts, day } = randomFlight(seed, {
    departures: ALL_DEPARTURES,
    channels: [...USUAL_CHANNELS, ...cells],
    sensors: { cellWeights: weights },
    script: { flightS: 60 },
  });
  const random = seededRandom(seed).fork("cell gains");
  const channels = new Map<ChannelName, Float64Array>(recording.channels);
  for (const cell of cells) {
    const gain = 1 + (random.normal() * facts.sensors.voltageAccuracyPct) / 200;
    channels.set(
      cell,
      channels
        .get(cell)!
        .map((volts) => volts * gain + (cell === cells[0] ? noiseOfFirstV * random.normal() : 0)),
    );
  }
  return analyseRecording({ ...recording, channels }, facts, day)[0]!;
}

function oneWeak(seed: number, weight: number): readonly number[] {
  return Array.from({ length: cellsOf(seed) }, (_, cell) => (cell === seed % cellsOf(seed) ? weight : 1));
}

describe(`cells side by side, ${FLIGHTS} random flights (seeds from ${FIRST_SEED})`, () => {
  const seeds = Array.from({ length: FLIGHTS }, (_, k) => FIRST_SEED + k);

  it("names none of equal cells", () => {
    const named = seeds.filter((seed) => cellsOfFlight(seed, null).weakestPart!.weakest !== null);
    expect(named.length).toBeLessThanOrEqual(0.05 * FLIGHTS);
  });

  it("names no cell for its noise alone", () => {
    const noisy = seeds.filter((seed) => cellsOfFlight(seed, null, 0.03).weakestPart!.weakest !== null);
    expect(noisy.length).toBeLessThanOrEqual(0.1 * FLIGHTS);
  });

  it("names the cell that loses a fifth more than the others, in a note, and never another", () => {
    const found = seeds.map((seed) => ({ seed, flight: cellsOfFlight(seed, oneWeak(seed, 1.2)) }));
    const right = found.filter(
      ({ seed, flight }) => flight.weakestPart!.weakest === (seed % cellsOf(seed)) + 1,
    );
    const wrong = found.filter(({ flight }) => flight.weakestPart!.weakest !== null).length - right.length;
    console.log(`named in ${right.length} of ${FLIGHTS}, wrongly in ${wrong}`);
    expect(wrong).toBe(0);
    expect(right.length).toBeGreaterThanOrEqual(0.9 * FLIGHTS);
    const notice = right[0]!.flight.notices.find(({ code }) => code === "weakest-cell")!;
    expect(notice.text).toContain(`Cell ${(FIRST_SEED % cellsOf(FIRST_SEED)) + 1} is the weakest`);
  });

  it("shares the pack's resistance out among the cells", () => {
    const { weakestPart, measures } = cellsOfFlight(FIRST_SEED, null);
    const sum = weakestPart!.parts.reduce((total, part) => total + part.resistanceMohm.value!, 0);
    expect(sum).toBeCloseTo(measures.packResistanceMohm.value!, 6);
    for (const { restV, minV } of weakestPart!.parts) expect(minV.value!).toBeLessThan(restV.value!);
  });
});
