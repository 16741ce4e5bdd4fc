import {
  highEnd,
  isKnown,
  type KnownQuantity,
  plainNumber,
  type Quantity,
  quantityText,
} from "../../base/quantity/index.ts";

export function packGivesUp(currentA: number, isPlanned: boolean, dropV: KnownQuantity): string {
  const current = `${plainNumber(currentA)} A`;
  const load = isPlanned ? `the planned static current of ${current}` : `the peak of ${current}`;
  return `Ten seconds into ${load} the pack gives up ${quantityText(dropV)}.`;
}

export function lowestAfterDrop(
  endCellV: KnownQuantity,
  kind: "flight" | "benchRun",
  limitV: number | null,
): string {
  const what = kind === "flight" ? "flight" : "run";
  const limit = limitV === null ? "" : `; the limit is ${plainNumber(limitV)} V`;
  return `With the charge of this ${what} drawn a cell then stands at ${quantityText(endCellV)}${limit}.`;
}

/** "Today full throttle held from cold brings ...", or where it settles when the limit is not met; null where unknown. */
export function heldFromCold(
  day: string,
  untilLimitS: Quantity,
  settlesC: Quantity,
  limitC: number,
): string | null {
  const limit = `${plainNumber(limitC)} °C`;
  if (isKnown(untilLimitS)) {
    return `${day} full throttle held from cold brings the controller to ${limit} after ${quantityText(untilLimitS)}.`;
  }
  if (!isKnown(settlesC)) return null;
  const relation = highEnd(settlesC) < limitC ? "below" : "within reach of";
  return `${day} full throttle settles at ${quantityText(settlesC)}, ${relation} the limit of ${limit}.`;
}

export function linesMeet(rpm: KnownQuantity, current: KnownQuantity): string {
  return `By the motor's constants the lines meet at ${quantityText(rpm)} and ${quantityText(current)}.`;
}

/** What the static run says of the meeting of the lines; a line drawn through the run itself tests less. */
export const AGREES = {
  measuredLine: "The static run lies within that: kv and winding resistance fit this pack.",
  publishedLine: "The static run lies within that: motor, propeller and pack are as described.",
  estimatedCurrent: "The logged speed lies within that; nobody logged the current.",
  not: "The static run lies beyond that: check kv, winding resistance, propeller and sensors.",
} as const;

/** Shares of the continuous rating and of the propeller's speed limit; null without either. */
export function shareOfLimits(ofRating: number | null, ofSpeed: number | null): string | null {
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const parts = [
    ...(ofRating === null ? [] : [`${percent(ofRating)} of the controller's continuous rating`]),
    ...(ofSpeed === null ? [] : [`${percent(ofSpeed)} of the propeller's highest speed`]),
  ];
  return parts.length === 0 ? null : `It asks for ${parts.join(" and ")}.`;
}
