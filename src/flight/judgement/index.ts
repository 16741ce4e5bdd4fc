export type { Judgement, Verdict } from "./judgement.ts";
