export type { PlanConditions } from "./conditions.ts";
export { shapeOf } from "./flownPropellers.ts";
export {
  type FlownPropeller,
  type KnownController,
  type KnownPack,
  type KnownParts,
  type KnownValue,
  type LoggedFlight,
  NOTHING_KNOWN,
} from "./knownParts.ts";
export { knownPartsFrom } from "./knownPartsFrom.ts";
export { equalLoadLadder, type InchStep, type LadderRung, oneInchRule } from "./ladder.ts";
export { PLAN_MEASURES, type PlanMeasure } from "./planModel.ts";
export { type BasisOf, type PlanMeasures, type PlanPrediction, predictPlan } from "./predictPlan.ts";
export { type Change, changedFacts, predictSwap, type SwapPrediction } from "./predictSwap.ts";
export type { Range } from "./range.ts";
export { sizeText } from "./sentences.ts";
