import { cellsOf, linesOf, readingsOf } from "./ownReader.ts";
import type { ReadSums } from "./readSums.ts";

/** Seconds, volts and amps of one line; NaN where the cell holds no number. */
type Point = readonly [number, number, number];

const PLAIN_UNITS = { time: "s", packVoltage: "V", current: "A" } as const;

/**
 * Sums that differ from those of a plain reader without a word are silent wrong numbers. Returns what differs,
 * null where nothing does, and "not comparable" where the file's own meaning is in doubt (another unit, a cell with
 * two readings): those are counted.
 */
export function silentDifference(bytes: Uint8Array, sums: ReadSums): string | null | "not comparable" {
  const { log, recording } = sums;
  if (recording.notices.some(({ severity }) => severity === "warning")) return null;
  const at = (["time", "packVoltage", "current"] as const).map(
    (channel) =>
      log.columns.find((each) => each.channel === channel && each.unit === PLAIN_UNITS[channel])?.column,
  );
  if (at.some((column) => column === undefined) || log.clock.kind !== "elapsed") return "not comparable";
  const points: Point[] = [];
  for (const line of linesOf(bytes, log.dialect.encoding).slice(log.dialect.headerLine)) {
    const cells = cellsOf(line, log.dialect.delimiter);
    const values = at.map((column) => numberOf(cells[column! - 1]));
    if (values.includes(null)) return "not comparable";
    if (!Number.isNaN(values[0]!)) points.push(values as unknown as Point);
  }
  const chargeMah = trapezoids(points.map(([s, , amps]) => [s, amps])) / 3.6;
  const energyWh = trapezoids(points.map(([s, volts, amps]) => [s, volts * amps])) / 3600;
  if (isNear(sums.chargeMah, chargeMah) && isNear(sums.energyWh, energyWh)) return null;
  return `no warning, but ${sums.chargeMah} mAh ${sums.energyWh} Wh against ${chargeMah} mAh ${energyWh} Wh`;
}

function numberOf(cell: string | undefined): number | null {
  const readings = [...new Set(readingsOf(cell ?? ""))];
  return readings.length > 1 ? null : (readings[0] ?? Number.NaN);
}

function isNear(got: number, expected: number): boolean {
  if (Number.isNaN(got)) return expected === 0;
  return Math.abs(got - expected) <= 1e-9 * Math.max(1, Math.abs(expected));
}

function trapezoids(all: readonly (readonly [number, number])[]): number {
  const points = all.filter(([, value]) => !Number.isNaN(value));
  const steps = points.slice(1).map(([s], index) => s - points[index]![0]);
  const sorted = steps.toSorted((one, other) => one - other);
  const middle = sorted.length / 2;
  const median =
    sorted.length % 2 === 1
      ? (sorted[Math.floor(middle)] ?? 0)
      : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
  const limitS = Math.max(2, 5 * median) + 1e-6;
  return steps.reduce(
    (sum, stepS, index) =>
      stepS > limitS ? sum : sum + ((points[index]![1] + points[index + 1]![1]) / 2) * stepS,
    0,
  );
}
