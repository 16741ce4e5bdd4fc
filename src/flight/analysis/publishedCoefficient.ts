import type { Facts } from "../../aircraft/facts.ts";
import { highEnd, isKnown, lowEnd, type Quantity } from "../../base/quantity/index.ts";
import { type PredictedCoefficient, predictStaticPowerCoefficient } from "../../physics/index.ts";

/** The static power coefficient published for this kind of propeller; null without its size. */
export function publishedCoefficient({ propeller }: Facts): PredictedCoefficient | null {
  const { diameterIn, pitchIn, blades, family } = propeller;
  if (diameterIn === null || pitchIn === null || !(diameterIn > 0 && pitchIn > 0)) return null;
  return predictStaticPowerCoefficient({ diameterIn, pitchIn, blades, family });
}

/** The published range that the whole interval of a measured coefficient lies outside of, or null. */
export function publishedRangeMissed(facts: Facts, measured: Quantity): PredictedCoefficient | null {
  const published = publishedCoefficient(facts);
  if (published === null || !isKnown(measured)) return null;
  return lowEnd(measured) > published.high || highEnd(measured) < published.low ? published : null;
}
