import type { ChannelName } from "../../base/channels/index.ts";
import { quantileInPlace } from "../../base/statistics/index.ts";
import type { RowRun } from "./lowRuns.ts";
import { smallestStep } from "./resolution.ts";

export const TEMPERATURES: readonly ChannelName[] = [
  "controllerTemperature",
  "motorTemperature",
  "packTemperature",
  "ambientTemperature",
];

/** No part here warms or cools faster: full throttle heats a controller by a few kelvin a second (our choice). */
export const FASTEST_K_PER_S = 20;
/** A smaller step between two readings may be noise or a held reading. */
const LEAST_JUMP_K = 15;
/** A reading may be held for this long by a slow probe. */
const LONGEST_HOLD_S = 2;
/** A reading that comes back within this time, to within this share of the jump, shows that it had been wrong. */
const LONGEST_EXCURSION_S = 60;
const BACK_SHARE = 0.5;
/** A working probe in a flight moves by more than this. */
const LEAST_LIFE_K = 3;

/** A probe that jumped for good: the readings on one side of the jump cannot be meant. */
export interface ProbeJump extends RowRun {
  readonly beforeC: number;
  readonly afterC: number;
  readonly jumpRow: number;
}

export interface TemperatureJumps {
  /** Rows that jump away and come back. */
  readonly rows: readonly number[];
  readonly forGood: ProbeJump | null;
}

/**
 * Steps of a temperature that nothing physical takes. Rows between a step away and one back are wrong; a step
 * without return is a probe that failed (or came alive): then the side that never moves is wrong, else the shorter.
 */
export function temperatureJumps(timeS: Float64Array, values: Float64Array): TemperatureJumps {
  if (!jumpsAtAll(values)) return { rows: [], forGood: null };
  const present = presentRows(values);
  const edges = edgesOf(timeS, values, present);
  const atS = (edge: number) => timeS[present[edge]!]!;
  const rows: number[] = [];
  let failure: ProbeJump | null = null;
  for (let at = 0; at < edges.length; at++) {
    const away = edges[at]!;
    let back = at + 1;
    while (back < edges.length && !isBack(values, present, away, edges[back]!)) {
      back = atS(edges[back]!) - atS(away) > LONGEST_EXCURSION_S ? edges.length : back + 1;
    }
    if (back >= edges.length || atS(edges[back]!) - atS(away) > LONGEST_EXCURSION_S) {
      failure ??= forGood(values, present, away);
      continue;
    }
    for (let i = away; i < edges[back]!; i++) rows.push(present[i]!);
    at = back;
  }
  return { rows, forGood: failure };
}

/** True where two readings that follow each other lie further apart than noise could bring them. */
function jumpsAtAll(values: Float64Array): boolean {
  let before = Number.NaN;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (Math.abs(value - before) > LEAST_JUMP_K) return true;
    before = value;
  }
  return false;
}

function presentRows(values: Float64Array): Int32Array {
  const rows = new Int32Array(values.length);
  let count = 0;
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row]!)) rows[count++] = row;
  return rows.subarray(0, count);
}

/** Places in `present` whose reading lies impossibly far from the one before. */
function edgesOf(timeS: Float64Array, values: Float64Array, present: Int32Array): number[] {
  const edges: number[] = [];
  let holdS = Number.NaN;
  for (let i = 1; i < present.length; i++) {
    const jump = Math.abs(values[present[i]!]! - values[present[i - 1]!]!);
    if (jump <= LEAST_JUMP_K) continue;
    if (Number.isNaN(holdS)) holdS = usualHoldS(timeS, values, present);
    const stepS = timeS[present[i]!]! - timeS[present[i - 1]!]!;
    if (jump > FASTEST_K_PER_S * Math.max(stepS, holdS)) edges.push(i);
  }
  return edges;
}

/** How long a reading is held at the shortest: time before changes by more than one step, the quickest tenth apart. */
function usualHoldS(timeS: Float64Array, values: Float64Array, present: Int32Array): number {
  const gaps = new Float64Array(present.length);
  const oneStep = 1.5 * smallestStep(values);
  let count = 0;
  let changedS = timeS[present[0]!]!;
  for (let i = 1; i < present.length; i++) {
    const change = Math.abs(values[present[i]!]! - values[present[i - 1]!]!);
    if (change === 0) continue;
    if (change > oneStep && change < LEAST_JUMP_K) gaps[count++] = timeS[present[i]!]! - changedS;
    changedS = timeS[present[i]!]!;
  }
  return count === 0 ? 0 : Math.min(LONGEST_HOLD_S, quantileInPlace(gaps.subarray(0, count), 0.1));
}

function isBack(values: Float64Array, present: Int32Array, away: number, edge: number): boolean {
  const before = values[present[away - 1]!]!;
  const jump = values[present[away]!]! - before;
  return Math.abs(values[present[edge]!]! - before) <= BACK_SHARE * Math.abs(jump);
}

function forGood(values: Float64Array, present: Int32Array, edge: number): ProbeJump {
  const isAfterWrong = isWrongAfter(values, present, edge);
  return {
    beforeC: values[present[edge - 1]!]!,
    afterC: values[present[edge]!]!,
    jumpRow: present[edge]!,
    firstRow: isAfterWrong ? present[edge]! : present[0]!,
    lastRow: isAfterWrong ? present[present.length - 1]! : present[edge - 1]!,
  };
}

/** A side that never moves is a failed probe's while the other lives; where both live or both rest, the shorter is wrong. */
function isWrongAfter(values: Float64Array, present: Int32Array, edge: number): boolean {
  const isBeforeAlive = moves(values, present.subarray(0, edge));
  const isAfterAlive = moves(values, present.subarray(edge));
  return isBeforeAlive === isAfterAlive ? present.length - edge <= edge : isBeforeAlive;
}

function moves(values: Float64Array, rows: Int32Array): boolean {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    low = Math.min(low, values[row]!);
    high = Math.max(high, values[row]!);
  }
  return high - low > LEAST_LIFE_K;
}
