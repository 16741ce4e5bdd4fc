import type { ClockFacts } from "./contract.ts";

/** A clock built from one or two columns, before it is known whether it is the best. */
export interface FoundClock {
  readonly timeS: Float64Array;
  readonly clock: ClockFacts;
  /** 0-based file column that carries the clock. */
  readonly column: number;
  /** A date column read with it, or null. */
  readonly dateColumn: number | null;
  readonly unit: string;
  readonly why: string;
  /** Date fields in an order that the log does not prove: the date as written. */
  readonly ambiguousDate: string | null;
  /** Whole numbers without a named unit, taken as seconds: the seconds between rows. Null for any other clock. */
  readonly unnamedStepS: number | null;
}

/** A column that is a clock but cannot be used without a choice. */
export interface DoubtfulClock {
  readonly column: number;
  readonly doubt: "unit";
  readonly stepS: number;
  readonly durationS: number;
  readonly unit: string;
}

/** Smallest decimal step that shows every number, 1 for whole numbers; at least 1e-6. */
export function shownStep(values: Float64Array): number {
  for (let decimals = 0; decimals < 6; decimals++) {
    const scale = 10 ** decimals;
    if (areWhole(values, scale)) return 1 / scale;
  }
  return 1e-6;
}

function areWhole(values: Float64Array, scale: number): boolean {
  for (let row = 0; row < values.length; row++) {
    if (!Number.isNaN(values[row]!) && !isNearWhole(values[row]! * scale)) return false;
  }
  return true;
}

function isNearWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-3 + Math.abs(value) * 4e-16;
}

/** Median of the steps forward; NaN when there is none. Looks at about 4000 places spread over the log. */
export function medianStep(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / 4000));
  const steps: number[] = [];
  let previous = Number.NaN;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    if (value > previous && at % stride === 0) steps.push(value - previous);
    previous = value;
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? Number.NaN;
}

/** From here on a double holds no decimal of a second exactly, but tells microseconds apart: 3 years. */
const INEXACT_DECIMALS_S = 1e8;

/** Seconds since the first usable row: differences first, so that large counters lose no digits. Seconds from 0 stay as they are. */
export function secondsSinceFirst(values: Float64Array, factor: number): Float64Array {
  const first = values.find((value) => !Number.isNaN(value)) ?? 0;
  if (first === 0 && factor === 1) return values;
  if (factor === 1 && first > INEXACT_DECIMALS_S) {
    return values.map((value) => Math.round((value - first) * 1e6) / 1e6);
  }
  const perSecond = 1 / factor;
  return values.map((value) =>
    factor < 1 ? (value - first) / Math.round(perSecond) : (value - first) * factor,
  );
}
