import type { Quantity } from "../../base/quantity/index.ts";
import type { MeasureName } from "../analysis/index.ts";

/** A fact whose measured value replaces the described one. */
export type WhyOffFact =
  | "propellerPowerCoefficient"
  | "packResistance"
  | "startVoltage"
  | "airDensity"
  | "motorConstants"
  | "cruiseShare"
  | "groundCharge"
  | "timeFlown"
  | "chargeLeft";

export interface WhyOffPart {
  readonly fact: WhyOffFact;
  /** Change of the line when this fact alone is replaced; null where the log does not give it. */
  readonly change: Quantity;
}

/**
 * Where one planned line went: measured = planned - planItself + the changes of the parts + rest. `baseline` is what
 * the aircraft as described gives, `planItself` the pilot's own number less that.
 */
export interface WhyOff {
  readonly line: MeasureName;
  readonly planned: number;
  readonly measured: Quantity;
  readonly baseline: Quantity;
  readonly planItself: Quantity;
  readonly parts: readonly WhyOffPart[];
  readonly rest: Quantity;
  readonly text: string;
}
