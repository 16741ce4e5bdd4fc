import type { Notice } from "../../base/notices/index.ts";
import { isKnown, quantityText } from "../../base/quantity/index.ts";
import type { PackPart, WeakestPart } from "./packPart.ts";

export const LOAD_HARDLY_MOVES = "the load hardly moves in this log, so they cannot be told apart under load";
export const NO_CURRENT_TO_SHARE = "without a current that works they cannot be told apart under load";

/** "Cell 3 is the weakest of 8: under load it loses 24 % more than the mean of all (3.1 ± 0.3 mΩ). It falls to 3.41 V." */
export function weakestNotice({ kind, parts }: WeakestPart, weakest: PackPart): Notice {
  const { number, sagSharePct, resistanceMohm, minV } = weakest;
  const name = kind === "cell" ? "Cell" : "Pack";
  const ohms = isKnown(resistanceMohm) ? ` (${quantityText(resistanceMohm)})` : "";
  const more = isKnown(sagSharePct) ? `${Math.round(sagSharePct.value - 100)} % more` : "more";
  const least = isKnown(minV) ? ` It falls to ${quantityText(minV)}.` : "";
  return {
    code: kind === "cell" ? "weakest-cell" : "weakest-pack",
    severity: "note",
    text: `${name} ${number} is the weakest of ${parts.length}: under load it loses ${more} than the mean of all${ohms}.${least}`,
    ...(isKnown(minV) && minV.sample ? { lines: [minV.sample.line] } : {}),
  };
}
