import type { Quantity } from "../../base/quantity/index.ts";

/** One cell, or one pack of two in series, as the log shows it. */
export interface PackPart {
  /** 1 is the first column. */
  readonly number: number;
  readonly restV: Quantity;
  readonly minV: Quantity;
  /** The pack's resistance times this part's share of the one-second volt steps, leads shared alike, mohm. */
  readonly resistanceMohm: Quantity;
  /** Its volt steps over the mean of the parts', percent: 100 is the mean. */
  readonly sagSharePct: Quantity;
}

export interface WeakestPart {
  readonly kind: "cell" | "pack";
  readonly parts: readonly PackPart[];
  /** Number of the part that sags most, where its interval is clear of every other's; else null. */
  readonly weakest: number | null;
}
