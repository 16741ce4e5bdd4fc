import type { PowerTrace } from "./powerTrace.ts";

/** A stretch above flight power: indices into the trace (both included) and their times. */
export interface PowerStretch {
  readonly first: number;
  readonly last: number;
  readonly startS: number;
  readonly endS: number;
}

const BINS = 1000;
/** Flight power begins between these shares of the level that half of the energy is drawn below, */
const LOWEST_SHARE = 0.38;
const HIGHEST_SHARE = 0.55;
/** in the emptiest of so many steps between them. */
const SHARE_STEPS = 10;
/** Steps that differ by less are equally empty. */
const NEARLY_EMPTY_S = 1;
/** Longest time for which one row speaks, seconds. */
const LONGEST_STEP_S = 2;

/** Loads that may separate flight from taxi, run-up idle and approach; both 0 when the motor draws nothing. */
export interface FlightPowerLevels {
  /** The emptiest level below the typical load. */
  readonly emptiest: number;
  /** The lowest: a short flight climbs for most of its time, and then its typical load is that of the climb. */
  readonly lowest: number;
}

/** Both levels lie below the energy-weighted median load, which long taxiing does not pull down. */
export function flightPowerLevels(trace: PowerTrace): FlightPowerLevels {
  let highest = 0;
  for (let i = 0; i < trace.load.length; i++) if (trace.load[i]! > highest) highest = trace.load[i]!;
  if (highest <= 0) return { emptiest: 0, lowest: 0 };
  const energy = new Float64Array(BINS);
  let total = 0;
  for (let i = 1; i < trace.load.length; i++) {
    const load = trace.load[i]!;
    const work = load * Math.min(trace.timeS[i]! - trace.timeS[i - 1]!, LONGEST_STEP_S);
    if (!(work > 0)) continue;
    energy[Math.min(BINS - 1, Math.floor((load / highest) * BINS))]! += work;
    total += work;
  }
  let below = 0;
  let bin = 0;
  while (bin < BINS - 1 && below + energy[bin]! < total / 2) below += energy[bin++]!;
  const typical = ((bin + 0.5) / BINS) * highest;
  return { emptiest: emptiestLevel(trace, typical), lowest: LOWEST_SHARE * typical };
}

/** The load between taxi and flight at which the motor spends the least time; of equals the middle one. */
function emptiestLevel(trace: PowerTrace, typical: number): number {
  const width = ((HIGHEST_SHARE - LOWEST_SHARE) / SHARE_STEPS) * typical;
  const start = LOWEST_SHARE * typical;
  const seconds = new Float64Array(SHARE_STEPS);
  for (let i = 1; i < trace.load.length; i++) {
    const step = Math.floor((trace.load[i]! - start) / width);
    if (step < 0 || step >= SHARE_STEPS) continue;
    seconds[step]! += Math.min(trace.timeS[i]! - trace.timeS[i - 1]!, LONGEST_STEP_S);
  }
  const near = seconds.map(
    (own, step) => own + ((seconds[step - 1] ?? own) + (seconds[step + 1] ?? own)) / 2,
  );
  const least = Math.min(...near) + NEARLY_EMPTY_S;
  const empty = Array.from(near.keys()).filter((step) => near[step]! <= least);
  return start + (empty[Math.floor(empty.length / 2)]! + 0.5) * width;
}

/** Stretches above `level`; dips of at most `bridgedS` do not end one. */
export function stretchesAbove(trace: PowerTrace, level: number, bridgedS: number): readonly PowerStretch[] {
  const stretches: PowerStretch[] = [];
  let first = -1;
  let last = -1;
  const close = () => {
    if (first >= 0) stretches.push({ first, last, startS: trace.timeS[first]!, endS: trace.timeS[last]! });
  };
  for (let i = 0; i < trace.load.length; i++) {
    if (!(trace.load[i]! > level)) continue;
    if (first < 0 || trace.timeS[i]! - trace.timeS[last]! > bridgedS) {
      close();
      first = i;
    }
    last = i;
  }
  close();
  return stretches;
}
