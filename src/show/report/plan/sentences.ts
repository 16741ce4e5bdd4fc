/** Every sentence and label of a plan and of a swap that is not data. */

export const PLAN_TITLE = "What it means for the plan";
export const PLAN_KEY =
  "Disc: predicted. Bar: 95 % interval. Upright mark: plan. Toothed wall: limit. Arrow: open end or beyond the axis.";
export const LIMITS_TITLE = "Against the limits";
export const PLANS_TITLE = "Against the planned numbers";
export const OTHERS_TITLE = "Nothing to hold it against";
export const PLAN_CAUTION =
  "A prediction, not a test: makers' limits come first, and a bench run with a log settles it.";

export const SWAP_TITLE = "Before and after";
export const SWAP_KEY =
  "Two bars a line: as fitted above, after the change below. Disc: predicted. Bar: 95 % interval. Toothed wall: limit.";
export const SWAP_OTHERS_TITLE = "Against what is fitted now";
export const SWAP_OTHERS_AXIS = "100 % is what is fitted now.";
export const BEFORE = "as fitted";
export const AFTER = "after";
export const SWAP_NOT_KNOWN = "What cannot be said, and why";

export const widened = (remarks: readonly string[]): string => `Note: ${remarks.join("; ")}.`;
export const sameLoad = (sizes: readonly string[]): string =>
  `Same load, same kind: ${sizes.join(", ")} (diameter x pitch, inches).`;
export const thrustWords = "Static thrust, an estimate from published coefficients";
