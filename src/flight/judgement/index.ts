export { headline } from "./headline.ts";
export { judgeFlight } from "./judgeFlight.ts";
export type { Judgement, Verdict } from "./judgement.ts";
export { judgePlan } from "./judgePlan.ts";
export { verdictOf } from "./verdict.ts";
