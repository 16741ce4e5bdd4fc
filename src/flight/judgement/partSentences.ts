import { type KnownQuantity, plainNumber, type Quantity, quantityText } from "../../base/quantity/index.ts";

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

/** One day's end of "full throttle held from cold": when the limit is met, else where it settles. */
export function heldWords(untilLimitS: Quantity, settlesC: Quantity, day: string): string | null {
  if (untilLimitS.value !== null) return `${day} after ${quantityText(untilLimitS)}`;
  return settlesC.value === null ? null : `${day} never: it settles at ${quantityText(settlesC)}`;
}

export function heldUntilLimit(limitC: number, days: readonly string[]): string {
  return `Full throttle held from cold brings the controller to its limit of ${plainNumber(limitC)} °C ${days.join("; ")}.`;
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
