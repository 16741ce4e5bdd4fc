import { COULOMBS_PER_MAH } from "../../base/quantity/index.ts";
import type { MeasureName } from "../analysis/index.ts";
import { type InputValues, type PlanFrame, planModel } from "../prediction/index.ts";
import type { WhyOffFact } from "./whyOff.ts";

/** The inputs of a plan and how long is flown. */
export interface OffValues {
  readonly inputs: InputValues;
  /** s; NaN where nobody planned it and nothing was flown. */
  readonly flownS: number;
}

type LineModel = (values: OffValues, frame: PlanFrame) => number;

/** Lines that follow from what is fitted. How long was flown is the pilot's choice; heating has no described value. */
export const LINE_MODELS: Readonly<Partial<Record<MeasureName, LineModel>>> = {
  staticCurrentA: ({ inputs }, frame) => planModel(inputs, frame).staticCurrentA,
  staticPowerW: ({ inputs }, frame) => planModel(inputs, frame).staticPowerW,
  staticRpm: ({ inputs }, frame) => planModel(inputs, frame).staticRpm,
  meanCurrentA: ({ inputs }, frame) => planModel(inputs, frame).meanCurrentA,
  minCellV: ({ inputs }, frame) => planModel(inputs, frame).minCellV,
  chargeUsedMah: ({ inputs, flownS }, frame) =>
    (planModel(inputs, frame).meanCurrentA * flownS) / COULOMBS_PER_MAH + inputs.groundMah,
};

const STATIC: readonly WhyOffFact[] = [
  "propellerPowerCoefficient",
  "packResistance",
  "startVoltage",
  "airDensity",
  "motorConstants",
];

/** The facts that a line can hang on. */
export function factsOfLine(line: MeasureName): readonly WhyOffFact[] {
  if (line === "meanCurrentA") return [...STATIC, "cruiseShare"];
  if (line === "chargeUsedMah") return [...STATIC, "cruiseShare", "groundCharge", "timeFlown"];
  return line === "minCellV" ? [...STATIC.filter((fact) => fact !== "startVoltage"), "chargeLeft"] : STATIC;
}
