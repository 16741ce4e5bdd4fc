import type { Recording } from "../../log/recording/index.ts";
import type { RowRange } from "./segments.ts";

/** How much of the volt steps of all parts together each part takes, relative to an equal share. */
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
 * Share of each part (cell or pack, logged in series) in the one-second volt steps that go with steps of the current.
 * The current only picks and weighs the steps, so its gain, delay and slowness cancel; and since its noise is not the
 * volts', a noisy cell takes no larger share (it would in the steps of a sum that holds its own noise).
 * @param currentA current of each row
 * @returns null where the current hardly moves
 */
export function sagShares(
  { timeS }: Recording,
  parts: readonly Float64Array[],
  currentA: Float64Array,
  { firstRow, lastRow }: RowRange,
): readonly SagShare[] | null {
  const steps = stepsOf(timeS, parts, currentA, firstRow, lastRow);
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
  readonly ofCurrent: Float64Array;
}

function stepsOf(
  timeS: Float64Array,
  parts: readonly Float64Array[],
  currentA: Float64Array,
  firstRow: number,
  lastRow: number,
): Steps {
  const width = parts.length;
  const stride = Math.ceil((lastRow - firstRow + 1) / MOST_STEPS);
  const ofParts = new Float64Array(width * MOST_STEPS);
  const ofCurrent = new Float64Array(MOST_STEPS);
  let count = 0;
  let largest = 0;
  let tail = firstRow;
  for (let row = firstRow + 1; row <= lastRow; row += stride) {
    while (tail + 1 < row && timeS[tail + 1]! <= timeS[row]! - STEP_S) tail++;
    if (timeS[row]! - timeS[tail]! > LONGEST_STEP_S) continue;
    const ofAmps = currentA[row]! - currentA[tail]!;
    let sum = ofAmps;
    for (let part = 0; part < width; part++) {
      const step = parts[part]![row]! - parts[part]![tail]!;
      ofParts[count * width + part] = step;
      sum += step;
    }
    if (Number.isNaN(sum)) continue;
    ofCurrent[count++] = ofAmps;
    largest = Math.max(largest, Math.abs(ofAmps));
  }
  return clearSteps({ count, ofParts, ofCurrent }, width, CLEAR_SHARE * largest);
}

function clearSteps({ count, ofParts, ofCurrent }: Steps, width: number, least: number): Steps {
  let kept = 0;
  for (let i = 0; i < count; i++) {
    if (!(Math.abs(ofCurrent[i]!) > least)) continue;
    ofParts.copyWithin(kept * width, i * width, (i + 1) * width);
    ofCurrent[kept++] = ofCurrent[i]!;
  }
  return { count: kept, ofParts, ofCurrent };
}

/** Per block and part: the sum of its steps times those of the current. */
function blockSums({ count, ofParts, ofCurrent }: Steps, width: number): readonly Float64Array[] {
  const blocks = Array.from({ length: BLOCKS }, () => new Float64Array(width));
  for (let i = 0; i < count; i++) {
    const block = blocks[Math.floor((i * BLOCKS) / count)]!;
    for (let part = 0; part < width; part++) block[part]! += ofParts[i * width + part]! * ofCurrent[i]!;
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
