import type { WholeRow } from "./flightNumbers.ts";

/** Charge and energy of a log. */
export interface Sums {
  readonly chargeMah: number;
  readonly energyWh: number;
}

/** A row whose amps or volts may be missing. */
export type PartialRow = Omit<WholeRow, "milliamps" | "millivolts"> & {
  readonly milliamps: number | null;
  readonly millivolts: number | null;
};

/**
 * Trapezoid sums in whole numbers, without rounding: the charge over rows that hold amps, the energy over rows
 * that hold both, never across more than max(2 s, 5 median steps) of those rows.
 */
export function exactSums(rows: readonly PartialRow[]): Sums {
  const charge = trapezoids(
    rows.flatMap(({ ms, milliamps }) => (milliamps === null ? [] : [{ ms, value: milliamps }])),
  );
  const energy = trapezoids(
    rows.flatMap(({ ms, milliamps, millivolts }) =>
      milliamps === null || millivolts === null ? [] : [{ ms, value: milliamps * millivolts }],
    ),
  );
  // Twice the sum in mA ms is 7.2e6 mAh; twice the sum in uW ms is 7.2e12 Wh.
  return { chargeMah: Number(charge) / 7.2e6, energyWh: Number(energy) / 7.2e12 };
}

/** Twice the sum. */
function trapezoids(points: readonly { readonly ms: number; readonly value: number }[]): bigint {
  const limitMs = Math.max(2000, 5 * medianStep(points.map(({ ms }) => ms)));
  let sum = 0n;
  for (let at = 1; at < points.length; at++) {
    const stepMs = points[at]!.ms - points[at - 1]!.ms;
    if (stepMs <= limitMs) sum += BigInt(points[at]!.value + points[at - 1]!.value) * BigInt(stepMs);
  }
  return sum;
}

function medianStep(times: readonly number[]): number {
  const steps = times.slice(1).map((ms, at) => ms - times[at]!);
  steps.sort((one, other) => one - other);
  const half = steps.length / 2;
  if (steps.length === 0) return 0;
  return steps.length % 2 === 1 ? steps[Math.floor(half)]! : (steps[half - 1]! + steps[half]!) / 2;
}
