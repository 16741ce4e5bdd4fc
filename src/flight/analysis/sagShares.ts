import type { Recording } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";

/** How much of the steps of all parts together each part takes, relative to an equal share. */
export interface SagShare {
  /** 1: the mean of the parts. */
  readonly relative: number;
  /** One standard error, by leaving out each of twelve stretches. */
  readonly standardError: number;
}

const BLOCKS = 12;
/** Steps over about a second; longer ones span a hole. */
const STEP_S = 1;
const LONGEST_STEP_S = 2;
/** Steps of at least this share of the largest tell; smaller ones are noise. */
const CLEAR_SHARE = 0.1;
const FEWEST_STEPS = 24;
/** More steps than this say nothing new. */
const MOST_STEPS = 20_000;

/**
 * Least-squares share of each part (cell or pack, logged in series) in the one-second volt steps of their sum.
 * The sum needs no current, so a slow or shifted current sensor does not matter. Null where the volts hardly move.
 */
export function sagShares(
  { timeS }: Recording,
  parts: readonly Float64Array[],
  { firstRow, lastRow }: RowRange,
): readonly SagShare[] | null {
  const steps = stepsOf(timeS, parts, firstRow, lastRow);
  if (steps.count < FEWEST_STEPS) return null;
  const blocks = blockSums(steps, parts.length);
  const whole = sumOf(blocks, -1);
  const without = blocks.map((_, left) => relativeShares(sumOf(blocks, left)));
  return relativeShares(whole).map((relative, part) => ({
    relative,
    standardError: jackknifeError(without.map((shares) => shares[part]!)),
  }));
}

interface Steps {
  readonly count: number;
  /** Row-major: the steps of each part. */
  readonly ofParts: Float64Array;
}

function stepsOf(
  timeS: Float64Array,
  parts: readonly Float64Array[],
  firstRow: number,
  lastRow: number,
): Steps {
  const width = parts.length;
  const stride = Math.ceil((lastRow - firstRow + 1) / MOST_STEPS);
  const all = new Float64Array(width * MOST_STEPS);
  const sums = new Float64Array(MOST_STEPS);
  let count = 0;
  let largest = 0;
  let tail = firstRow;
  for (let row = firstRow + 1; row <= lastRow; row += stride) {
    while (tail + 1 < row && timeS[tail + 1]! <= timeS[row]! - STEP_S) tail++;
    const spanS = timeS[row]! - timeS[tail]!;
    if (spanS > LONGEST_STEP_S) continue;
    let sum = 0;
    for (let part = 0; part < width; part++) {
      const step = parts[part]![row]! - parts[part]![tail]!;
      all[count * width + part] = step;
      sum += step;
    }
    if (Number.isNaN(sum)) continue;
    sums[count++] = sum;
    largest = Math.max(largest, Math.abs(sum));
  }
  return clearSteps(all, sums.subarray(0, count), width, CLEAR_SHARE * largest);
}

function clearSteps(all: Float64Array, sums: Float64Array, width: number, least: number): Steps {
  let count = 0;
  for (let i = 0; i < sums.length; i++) {
    if (!(Math.abs(sums[i]!) > least)) continue;
    all.copyWithin(count * width, i * width, (i + 1) * width);
    count++;
  }
  return { count, ofParts: all.subarray(0, count * width) };
}

/** Per block and part: the sum of its steps times those of the whole. */
function blockSums({ count, ofParts }: Steps, width: number): readonly Float64Array[] {
  const blocks = Array.from({ length: BLOCKS }, () => new Float64Array(width));
  for (let i = 0; i < count; i++) {
    const block = blocks[Math.floor((i * BLOCKS) / count)]!;
    let sum = 0;
    for (let part = 0; part < width; part++) sum += ofParts[i * width + part]!;
    for (let part = 0; part < width; part++) block[part]! += ofParts[i * width + part]! * sum;
  }
  return blocks;
}

function sumOf(blocks: readonly Float64Array[], leftOut: number): Float64Array {
  const sum = new Float64Array(blocks[0]!.length);
  blocks.forEach((block, at) => {
    if (at !== leftOut) for (let part = 0; part < sum.length; part++) sum[part]! += block[part]!;
  });
  return sum;
}

function relativeShares(sums: Float64Array): readonly number[] {
  const total = sums.reduce((sum, value) => sum + value, 0);
  return Array.from(sums, (value) => (value * sums.length) / total);
}

function jackknifeError(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt((squares * (values.length - 1)) / values.length);
}
