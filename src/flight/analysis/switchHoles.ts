import type { Hole, Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { MotorRunning } from "./motorRunning.ts";
import { endsFlight, type RowRange } from "./segments.ts";

/**
 * Holes inside `rows` in which the motor started or stopped unseen: it runs on one side only, and neither current
 * nor shaft speed holds a value in between. Holes that end a flight are left out.
 */
export function switchHoles(
  recording: Recording,
  { firstRow, lastRow }: RowRange,
  { isRunning }: MotorRunning,
): readonly Hole[] {
  const tellers = (["current", "shaftSpeed"] as const).flatMap(
    (channel) => workingChannel(recording, channel) ?? [],
  );
  return recording.holes.filter(
    (hole) =>
      hole.rowBefore >= firstRow &&
      hole.rowAfter <= lastRow &&
      !endsFlight(recording, hole) &&
      isRunning[hole.rowBefore] !== isRunning[hole.rowAfter] &&
      !tellers.some((values) => holdsValue(values, hole)),
  );
}

function holdsValue(values: Float64Array, { rowBefore, rowAfter }: Hole): boolean {
  for (let row = rowBefore + 1; row < rowAfter; row++) if (!Number.isNaN(values[row]!)) return true;
  return false;
}
