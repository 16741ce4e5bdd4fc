import { theilSen } from "../../base/statistics/index.ts";
import type { RawSeries } from "./rawSeries.ts";
import { anotherPropeller, extraHeat, lostCooling, watchThePack } from "./sentences.ts";

/** Where to look when a series changed; empty where the change speaks for itself. */
export function adviceFor({ measure, x, timeConstantsS }: RawSeries): string {
  if (measure === "packResistanceMohm") return watchThePack();
  if (measure === "propellerPowerCoefficient") return anotherPropeller();
  if (measure !== "controllerRisePerA2") return "";
  const low = timeConstantsS && theilSen(x, timeConstantsS).low;
  return typeof low === "number" && low > 0 ? lostCooling() : extraHeat();
}
