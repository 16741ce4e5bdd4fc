import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import {
  mean,
  median,
  pooledSpread,
  sampleStandardDeviation,
  studentTQuantile,
} from "../../base/statistics/index.ts";
import type { KnownValue } from "./knownParts.ts";
import { measuredIn } from "./sentences.ts";

/** A scatter seen in a few flights is pooled with the prior spread, which counts like that of so many flights. */
const PRIOR_WORTH = 10;
const TWO_SIDED = 0.975;

export interface Pooling {
  /** Relative spread from flight to flight assumed before any is known (1 sd). */
  readonly priorSpread: number;
  /**
   * "part": the mean of one and the same part, its scatter averages out. "next": what the next flight will show,
   * its scatter does not.
   */
  readonly of: "part" | "next";
}

/**
 * One value from the same measure of several flights: the mean, with the half-widths of the single ones (they
 * share the sensors' gains, so they do not average out) and the scatter from flight to flight in quadrature.
 * Null without one known value. Bounds (one end missing) do not count.
 */
export function pooled(quantities: readonly Quantity[], pooling: Pooling): KnownValue | null {
  const good = quantities.filter(isKnown).filter(({ low, high }) => low !== null && high !== null);
  if (good.length === 0) return null;
  const values = good.map(({ value }) => value);
  const value = mean(values);
  const scatter = scatterHalfWidth(values, value, pooling);
  const below = Math.hypot(median(good.map((one) => one.value - one.low!)), scatter);
  const above = Math.hypot(median(good.map((one) => one.high! - one.value)), scatter);
  return {
    value,
    low: value - below,
    high: value + above,
    flights: good.length,
    basis: measuredIn(good.length),
  };
}

function scatterHalfWidth(values: readonly number[], value: number, { priorSpread, of }: Pooling): number {
  const count = values.length;
  const spread = pooledSpread(
    { standardDeviation: count > 1 ? sampleStandardDeviation(values) : 0, degreesOfFreedom: count - 1 },
    { standardDeviation: priorSpread * Math.abs(value), degreesOfFreedom: PRIOR_WORTH },
  );
  const share = of === "part" ? 1 / count : 1 + 1 / count;
  const t = studentTQuantile(TWO_SIDED, spread.degreesOfFreedom);
  return t * spread.standardDeviation * Math.sqrt(share);
}
