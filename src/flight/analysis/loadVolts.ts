import { highEnd, isKnown } from "../../base/quantity/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { Measures } from "./measures.ts";
import { plateauMedian } from "./staticRun.ts";

/** The pack as the static run met it. */
export interface LoadVolts {
  readonly openCircuitV: number;
  /** 0 where it is not known: the line then has the volts of the static run throughout. */
  readonly packOhm: number;
  readonly packHalfWidthOhm: number;
  /** Of the volts, relative, 95 %. */
  readonly relativeHalfWidth: number;
}

const MOHM = 1000;

/** Volts at no load behind the static run: its volts and what the pack's resistance took; null without them. */
export function loadVolts(
  { recording, staticRun, facts }: FlightContext,
  { measures }: Identified,
  { staticCurrentA }: Measures,
): LoadVolts | null {
  const volts = workingChannel(recording, "packVoltage");
  if (volts === null || staticRun.firstRow === null || !isKnown(staticCurrentA)) return null;
  const packV = plateauMedian((row) => volts[row]!, staticRun.firstRow, staticRun.lastRow)?.value;
  if (packV === undefined) return null;
  const { packResistance10sMohm } = measures;
  const found = isKnown(packResistance10sMohm) ? packResistance10sMohm : null;
  const mohm = found?.value ?? facts.pack.resistanceMohm ?? 0;
  const packOhm = mohm / MOHM;
  return {
    openCircuitV: packV + packOhm * staticCurrentA.value,
    packOhm,
    packHalfWidthOhm: found === null ? 0 : (highEnd(found) - mohm) / MOHM,
    relativeHalfWidth: facts.sensors.voltageAccuracyPct / 100,
  };
}
