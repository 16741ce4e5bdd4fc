export { headline } from "./headline.ts";
export { judgeFlight } from "./judgeFlight.ts";
export type { Judgement, Verdict } from "./judgement.ts";
export { judgePlan } from "./judgePlan.ts";
export { type PlanResult, planResult } from "./planResult.ts";
export { predictedPart, predictedText, restsOn } from "./planSentences.ts";
export { type SwapResult, type SwapSide, swapResult } from "./swapResult.ts";
export { verdictOf } from "./verdict.ts";
