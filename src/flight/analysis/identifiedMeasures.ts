import type { Notice } from "../../base/notices/index.ts";
import { ambientOfDay } from "./ambientOfDay.ts";
import { type ControllerHeat, identifyControllerHeat } from "./controllerHeat.ts";
import type { FlightContext } from "./flightContext.ts";
import { coefficientUnlike, kvOffered, speedDoubt, wrongSettingNotice } from "./identifiedSentences.ts";
import type { LagCorrection } from "./lagCorrection.ts";
import type { Measures } from "./measures.ts";
import { identifyMotorLoad, type MotorLoad } from "./motorLoad.ts";
import { identifyPackResistance, type PackResistance } from "./packResistance.ts";
import { publishedRangeMissed } from "./publishedCoefficient.ts";
import { rowsWithin } from "./rowsBetween.ts";
import type { RowRange } from "./segments.ts";

export type IdentifiedName =
  | "packResistanceMohm"
  | "packResistance10sMohm"
  | "controllerTimeConstantS"
  | "controllerRisePerA2"
  | "propellerPowerCoefficient"
  | "motorEfficiencyPct";

/** The parts as this flight shows them, with what their pictures need. */
export interface IdentifiedParts {
  readonly pack: PackResistance;
  readonly heat: ControllerHeat;
  readonly load: MotorLoad;
}

/** What the log says about the parts themselves. */
export interface Identified {
  readonly measures: Pick<Measures, IdentifiedName>;
  /** Null where the heating could not be fitted: the peak then stands as logged. */
  readonly peakLag: LagCorrection | null;
  readonly parts: IdentifiedParts;
  /** Why no judgement may rest on logged shaft speed; null where nothing speaks against it. */
  readonly speedDoubt: string | null;
  /** A setting that cannot be right, a kv that full throttle contradicts. */
  readonly notices: readonly Notice[];
}

/** Pack resistance, controller heating, propeller and motor of one flight, each null with its reason. */
export function identifiedMeasures(context: FlightContext): Identified {
  const { recording, rows, facts, day, staticRun } = context;
  const pack = identifyPackResistance(recording, rows, facts);
  const plateau =
    staticRun.firstRow === null ? null : { firstRow: staticRun.firstRow, lastRow: staticRun.lastRow };
  const load = identifyMotorLoad(recording, rows, facts, day, plateau, rowsInAir(context), pack.timing);
  const ambient = ambientOfDay(context);
  const air = ambient.ambientC === null ? null : ambient;
  const heat = identifyControllerHeat(recording, rows, facts, air, load, pack.timing);
  return {
    measures: {
      packResistanceMohm: pack.after1S,
      packResistance10sMohm: pack.after10S,
      controllerTimeConstantS: heat.timeConstantS,
      controllerRisePerA2: heat.risePerA2,
      propellerPowerCoefficient: load.propellerPowerCoefficient,
      motorEfficiencyPct: load.motorEfficiencyPct,
    },
    peakLag: heat.peakLag,
    parts: { pack, heat, load },
    speedDoubt: load.wrongSetting && speedDoubt(load.wrongSetting.cause, load.wrongSetting.candidates),
    notices: noticesOf(load, context),
  };
}

function rowsInAir({ recording, shape }: FlightContext): RowRange | null {
  if (shape === null) return null;
  const rows = rowsWithin(recording.timeS, shape.takeOff.value, shape.touchdown.value);
  return rows.firstRow <= rows.lastRow ? rows : null;
}

function noticesOf(load: MotorLoad, { recording, facts, staticRun }: FlightContext): readonly Notice[] {
  if (staticRun.firstRow === null) return [];
  const line = recording.lineOfRow(staticRun.firstRow);
  if (load.wrongSetting !== null) return [wrongSettingNotice(load.wrongSetting, line)];
  const { offeredKv, propellerPowerCoefficient } = load;
  const missed = publishedRangeMissed(facts, propellerPowerCoefficient);
  return [
    ...(offeredKv === null || offeredKv.value === null
      ? []
      : [kvOffered(offeredKv.value, facts.motor.kv!, line)]),
    ...(missed === null || propellerPowerCoefficient.value === null
      ? []
      : [coefficientUnlike(propellerPowerCoefficient.value, missed, line)]),
  ];
}
