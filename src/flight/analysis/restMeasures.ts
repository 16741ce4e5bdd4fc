import { known, type Quantity, unknown } from "../../base/quantity/index.ts";
import { smallestStep } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { FlightContext } from "./flightContext.ts";
import { NO_CELL_COUNT } from "./sentences.ts";

/** restPackV and restCellV: pack volts before the first run, whole and per cell. */
export function restMeasures(context: FlightContext): { restPackV: Quantity; restCellV: Quantity } {
  const { recording, facts, restBefore, cells } = context;
  if (restBefore.packV === null) {
    return { restPackV: unknown("V", restBefore.why), restCellV: unknown("V", restBefore.why) };
  }
  const { packV, standardErrorV } = restBefore;
  const gainV = (facts.sensors.voltageAccuracyPct / 100) * packV;
  const stepV = smallestStep(workingChannel(recording, "packVoltage") ?? new Float64Array());
  const halfWidthV = Math.hypot(gainV, stepV / Math.sqrt(3), 2 * standardErrorV);
  const restPackV = known(packV, halfWidthV, "V", "measured");
  if (cells === null) return { restPackV, restCellV: unknown("V", NO_CELL_COUNT) };
  return { restPackV, restCellV: known(packV / cells, halfWidthV / cells, "V", "derived") };
}
