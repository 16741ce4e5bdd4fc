import { diameterMatters, fitStaticMeans, predictLog } from "../../src/physics/coefficientFit.ts";
import { fitGroup, type PropellerShape, predictStaticPowerCoefficient } from "../../src/physics/index.ts";
import { PROPELLER_KINDS, STATIC_MEANS } from "../../src/physics/staticMeans.ts";
import type { Random } from "../generator/index.ts";

/**
 * A static power coefficient as measured propellers have them: the line of the kind, off by what one of the measured
 * two-blade propellers of that kind (UIUC Propeller Data Site, volumes 1 to 4) is off the line through the others.
 */
export function coefficientOfMeasuredPropeller(shape: PropellerShape, random: Random): number {
  const group = fitGroup(shape.family);
  const kind = group === "all kinds" ? random.pick(PROPELLER_KINDS) : group;
  const means = STATIC_MEANS[kind];
  const at = random.whole(0, means.length - 1);
  const [diameterIn, pitchIn, , cp] = means[at]!;
  const fit = fitStaticMeans(
    means.filter((_, i) => i !== at),
    "power",
    diameterMatters(kind, "power"),
  );
  const off = Math.log(cp) - predictLog(fit, diameterIn, pitchIn).log;
  return predictStaticPowerCoefficient(shape).value * Math.exp(off);
}
