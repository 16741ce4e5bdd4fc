import type { Random } from "../generator/random.ts";

/** One row of a log in whole numbers, so that its sums can be added without rounding. */
export interface WholeRow {
  readonly ms: number;
  readonly millivolts: number;
  readonly milliamps: number;
  readonly rpm: number;
  readonly tenthsC: number;
}

const STEPS_MS = [100, 200, 250, 500, 1000] as const;

/** A short invented flight: rest, a climb, a cruise of changing power, rest; 60 rows or more. */
export function flightNumbers(random: Random, mostRows = 200): readonly WholeRow[] {
  const rows = random.whole(60, mostRows);
  const stepMs = random.pick(STEPS_MS);
  const cells = random.whole(6, 12);
  const peakA = random.between(30, 90);
  const restRows = Math.max(6, Math.min(Math.ceil(3000 / stepMs), Math.floor(rows / 6)));
  const climbRows = Math.round(rows * 0.2);
  let heat = random.between(10, 25);
  return Array.from({ length: rows }, (_, row) => {
    const isRest = row < restRows || row >= rows - restRows;
    const level = row < restRows + climbRows ? 1 : 0.35 + 0.15 * Math.sin(row / 7);
    const amps = isRest ? 0.3 + 0.1 * (row % 3) : peakA * level * random.between(0.97, 1.03);
    heat += isRest ? -0.02 : (amps * stepMs) / 100_000;
    const volts = cells * (4.15 - 0.002 * row) - 0.03 * amps;
    return {
      ms: row * stepMs,
      millivolts: 10 * Math.round(volts * 100),
      milliamps: 100 * Math.round(amps * 10),
      rpm: isRest ? 0 : Math.round(900 * Math.sqrt(amps)),
      tenthsC: Math.round(heat * 10),
    };
  });
}
