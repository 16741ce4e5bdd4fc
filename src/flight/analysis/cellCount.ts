import type { Facts } from "../../aircraft/facts.ts";
import { isCellChannel } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { motorRunning } from "./motorRunning.ts";
import { restBefore } from "./restVoltage.ts";
import { runsOf } from "./runs.ts";
import { segmentsOf } from "./segments.ts";
import { cellCountDoubt } from "./sentences.ts";

/** Cells in series: of the aircraft file, else as many as the log holds columns for; null when not known. */
export function cellsInSeries(recording: Recording, facts: Facts): number | null {
  if (facts.pack.cells !== null) return facts.pack.cells;
  const logged = [...recording.channels.keys()].filter(isCellChannel).length;
  return logged >= 2 ? logged : null;
}

/** Above full by more than this no charger leaves a cell, volts; sensor accuracy comes on top. */
const OVERFULL_V = 0.05;
/** A rested cell below this is damaged or miscounted: nobody flies it. By chemistry, volts. */
const LOWEST_REST_V: Readonly<Record<Facts["pack"]["chemistry"], number>> = {
  lipo: 3.3,
  lihv: 3.3,
  liion: 2.9,
  life: 2.8,
};

/**
 * A question when the aircraft file's cell count cannot fit the pack's volts at rest, or null. It cannot when
 * a cell would be above full or below what anyone flies; a full pack of one cell less can be a part-charged
 * pack of this count, and passes.
 */
export function cellCountQuestion(recording: Recording, facts: Facts): Notice | null {
  const { cells, fullCellV, chemistry } = facts.pack;
  if (cells === null) return null;
  const packV = restedPackV(recording);
  if (packV === null) return null;
  const gain = 1 + facts.sensors.voltageAccuracyPct / 100;
  const fits = (count: number) =>
    packV / count <= (fullCellV + OVERFULL_V) * gain && packV / count >= LOWEST_REST_V[chemistry] / gain;
  if (fits(cells)) return null;
  const highest = Math.floor((packV * gain) / LOWEST_REST_V[chemistry]);
  const lowest = Math.max(1, Math.ceil(packV / ((fullCellV + OVERFULL_V) * gain)));
  const likely = Array.from({ length: Math.max(0, highest - lowest + 1) }, (_, index) => lowest + index);
  return cellCountDoubt(cells, packV, likely);
}

/** Volts before the log's first run; a log without rest there gives its highest, which no load lifts. */
export function restedPackV(recording: Recording): number | null {
  const volts = workingChannel(recording, "packVoltage");
  if (volts === null) return null;
  const running = motorRunning(recording);
  const segment = segmentsOf(recording)[0]!;
  const first = running ? runsOf(running.isRunning, recording, segment)[0] : undefined;
  const rest = first ? restBefore(recording, segment, first.firstRow) : null;
  if (rest?.packV != null) return rest.packV;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of volts) if (value > highest) highest = value;
  return Number.isFinite(highest) ? highest : null;
}
