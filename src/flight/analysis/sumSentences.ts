import { type ChannelName, channelWords } from "../../base/channels/index.ts";
import { lengthInWords, plainNumber } from "../../base/quantity/index.ts";

export const NO_ROWS_TO_SUM = "fewer than two rows here hold what is summed";
export const LOWER_BOUND_START = "the log starts under power, so more was used";
export const LOWER_BOUND_END = "the log ends under power, so more was used";
export const LOWER_BOUND_LONG_HOLE = "a hole longer than a minute or of unknown length is not counted";
export const LOWER_BOUND_MISSING_ENDS = "the start or end of this stretch holds no value, so more was used";
export const LOWER_BOUND_CEILING =
  "the current sensor reads no higher than its limit, so more may have flowed";
export const CURRENT_AT_CEILING =
  "the current sensor reads no higher than its limit, so what rests on the current cannot be told";
export const CURRENT_UNSEEN =
  "the current is missing for a part of this flight, in which it may have been higher";
export const MEAN_OF_SEEN = "of the part with current; it is missing for the rest";
export const MEAN_OF_CELLS = "pack volts over the cell count: the weakest cell may lie lower";

export function bridged(seconds: number): string {
  return `${plainNumber(seconds)} s of holes are estimated; the interval reaches from nothing used in them to their largest neighbour`;
}

export function stuckFor(seconds: number): string {
  return `the current sensor sticks for ${plainNumber(seconds)} s; the interval reaches from nothing used then to its largest neighbour`;
}

export function lifted(offsetA: number): string {
  return `lifted by ${plainNumber(-offsetA)} A, the sensor's negative reading at rest`;
}

export function noValueHere(channel: ChannelName): string {
  return `no ${channelWords(channel)} value in this stretch of the log`;
}

export function probeSilent(seconds: number): string {
  return `its probe gave no reading for ${lengthInWords(seconds)} while the motor ran`;
}
