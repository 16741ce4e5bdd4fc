export type { PlanConditions } from "./conditions.ts";
export { shapeOf } from "./flownPropellers.ts";
export { isBelieved, knownFromBelieved } from "./knownFromBelieved.ts";
export {
  type FlownPropeller,
  type KnownController,
  type KnownPack,
  type KnownParts,
  type KnownValue,
  type LoggedFlight,
  type NamedFlight,
  NOTHING_KNOWN,
} from "./knownParts.ts";
export { knownPartsFrom } from "./knownPartsFrom.ts";
export { equalLoadLadder, type InchStep, inchRuleRange, type LadderRung, oneInchRule } from "./ladder.ts";
export { startCellInput } from "./packInputs.ts";
export {
  centreOf,
  type Input,
  type InputName,
  type InputValues,
  isRange,
  type PlanInputs,
} from "./planInputs.ts";
export { type PreparedPlan, preparedPlan } from "./planInputsOf.ts";
export { PLAN_MEASURES, type PlanFrame, type PlanMeasure, planModel } from "./planModel.ts";
export { type BasisOf, type PlanMeasures, type PlanPrediction, predictPlan } from "./predictPlan.ts";
export { type Change, changedFacts, predictSwap, type SwapPrediction } from "./predictSwap.ts";
export type { Range } from "./range.ts";
export { runInLog, sizeText } from "./sentences.ts";
export { mostThrustToWeight } from "./thrust.ts";
