import type { Facts } from "../../aircraft/facts.ts";
import { type PredictedCoefficient, predictStaticPowerCoefficient } from "../../physics/index.ts";

/** The static power coefficient published for this kind of propeller; null without its size. */
export function publishedCoefficient({ propeller }: Facts): PredictedCoefficient | null {
  const { diameterIn, pitchIn, blades, family } = propeller;
  if (diameterIn === null || pitchIn === null || !(diameterIn > 0 && pitchIn > 0)) return null;
  return predictStaticPowerCoefficient({ diameterIn, pitchIn, blades, family });
}
