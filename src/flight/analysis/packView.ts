import {
  between,
  highEnd,
  isKnown,
  known,
  lowEnd,
  type Quantity,
  unknown,
} from "../../base/quantity/index.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { PackPicture } from "./packResistancePicture.ts";
import { NO_CELL_COUNT } from "./sentences.ts";

/** What a section on the pack shows beside the measures. */
export interface PackView {
  /** Null where no resistance was found; `packResistanceMohm` says why. */
  readonly picture: PackPicture | null;
  /** The same resistance after one second from changes over one second alone, mohm. */
  readonly byStepsMohm: number | null;
  /** Whole-log fit less that. */
  readonly differenceMohm: number | null;
  /** What the pack gives ten seconds into a load: volts lost, and volts of a cell with this flight's charge drawn. */
  readonly under: (currentA: number) => UnderLoad;
}

export interface UnderLoad {
  readonly dropV: Quantity;
  readonly endCellV: Quantity;
}

/** How well the volts at no load of a cell are known at the end of the fitted curve, V (95 %; our choice). */
const CURVE_DOUBT_V = 0.02;
const MOHM = 1000;

export function packView(context: FlightContext, { parts, measures }: Identified): PackView {
  const { pack } = parts;
  const openV = pack.openCircuitV?.(1) ?? null;
  return {
    picture: pack.picture,
    byStepsMohm: pack.byStepsMohm,
    differenceMohm: pack.differenceMohm,
    under: (currentA) => underLoad(measures.packResistance10sMohm, openV, currentA, context),
  };
}

function underLoad(
  resistance: Quantity,
  openV: number | null,
  currentA: number,
  { cells, facts }: FlightContext,
): UnderLoad {
  if (!isKnown(resistance) || openV === null) {
    const why = isKnown(resistance) ? NO_CELL_COUNT : resistance.why;
    return { dropV: unknown("V", why), endCellV: unknown("V", why) };
  }
  const dropAt = (mohm: number) => (mohm / MOHM) * currentA;
  const drop = dropAt(resistance.value);
  const halfWidth = Math.max(drop - dropAt(lowEnd(resistance)), dropAt(highEnd(resistance)) - drop);
  const dropV = between(drop, drop - halfWidth, drop + halfWidth, "V", "predicted");
  if (cells === null) return { dropV, endCellV: unknown("V", NO_CELL_COUNT) };
  const gain = (facts.sensors.voltageAccuracyPct / 100) * (openV - drop);
  const cellHalfWidth = Math.hypot(halfWidth / cells, gain / cells, CURVE_DOUBT_V);
  return { dropV, endCellV: known((openV - drop) / cells, cellHalfWidth, "V", "predicted") };
}
