import type { ChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";

/** A stretch without usable rows (time, volts and amps), between two usable rows. */
export interface Hole {
  /** Last usable row before and first usable row after. */
  readonly rowBefore: number;
  readonly rowAfter: number;
  readonly startS: number;
  readonly endS: number;
  /** True when the clock jumped and its true length is not known. */
  readonly isUnknownLength: boolean;
}

/** A value taken out (`masked`) or changed by a repair; the report lists them by line. */
export interface Repair {
  readonly channel: ChannelName;
  readonly row: number;
  readonly line: number;
  readonly kind: "impossible" | "spike" | "jump";
  /** What the log said, in the channel's unit. */
  readonly value: number;
}

/** A sensor that says nothing although it writes numbers. Measures that need it are null with `why`. */
export interface DeadChannel {
  readonly channel: ChannelName;
  readonly why: string;
}

/**
 * One log on one honest clock. Row arrays all have `rows` entries; missing is NaN, never 0.
 * `timeS` rises strictly from 0 at the first row kept.
 */
export interface Recording {
  readonly rows: number;
  /** Data lines of the file (`rows` of the JSON result). */
  readonly dataLines: number;
  /** Rows with usable time, pack voltage and current, duplicates once. */
  readonly rowsUsed: number;
  /** First to last usable row, seconds. */
  readonly durationS: number;
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<ChannelName, Float64Array>;
  readonly lineOfRow: (row: number) => number;
  /** The log's own clock at a row as written, or null. */
  readonly clockTextOfRow: (row: number) => string | null;
  /** Median step between usable rows, seconds. */
  readonly stepS: number;
  readonly holes: readonly Hole[];
  readonly repairs: readonly Repair[];
  readonly dead: readonly DeadChannel[];
  readonly notices: readonly Notice[];
}

/** Corrections the aircraft file states for its sensors. */
export interface SensorCorrections {
  /** Logged amps times this are amps. */
  readonly currentScale: number;
  /** Logged revolutions over this are shaft revolutions. */
  readonly rpmDivisor: number;
}

/** Times are decimals: 8.8 s less 6.8 s is a hair more than 2 s in a double, and yet no more than 2 s. */
const ROUNDING_S = 1e-6;

/** Two rows further apart than this are a hole: max(2 s, 5 median steps). The sums use the same rule. */
export function holeLimitS(stepS: number): number {
  return Math.max(2, 5 * stepS) + ROUNDING_S;
}
