/**
 * Mean of the known values within `halfWindowS` on either side of each row, NaN where there is none. `timeS`
 * rises; both arrays have the same length. Running sums, one pass.
 * @param mean where the result goes
 */
export function centredMean(
  timeS: Float64Array,
  values: Float64Array | Float32Array,
  halfWindowS: number,
  mean: Float32Array = new Float32Array(values.length),
): Float32Array {
  const reachS = halfWindowS + 1e-6;
  let sum = 0;
  let count = 0;
  let head = 0;
  let tail = 0;
  for (let row = 0; row < values.length; row++) {
    for (; head < values.length && timeS[head]! <= timeS[row]! + reachS; head++) {
      if (Number.isNaN(values[head]!)) continue;
      sum += values[head]!;
      count++;
    }
    for (; timeS[tail]! < timeS[row]! - reachS; tail++) {
      if (Number.isNaN(values[tail]!)) continue;
      sum -= values[tail]!;
      count--;
    }
    // What rounding leaves of a sum over nothing is no value, and must not be carried on.
    if (count === 0) sum = 0;
    mean[row] = count === 0 ? Number.NaN : sum / count;
  }
  return mean;
}
