import type { PlannedPropeller } from "../../aircraft/budget.ts";
import { sizeText } from "../prediction/index.ts";

/** "made for the 18x10, not the 18x8"; blades are named where only they differ. */
export function plannedForOther(planned: PlannedPropeller, flown: PlannedPropeller): string {
  const words = (one: PlannedPropeller) =>
    planned.blades === flown.blades ? sizeText(one) : `${sizeText(one)} with ${one.blades} blades`;
  return `made for the ${words(planned)}, not the ${words(flown)}`;
}
