import type { Facts } from "../../aircraft/facts.ts";
import type { PropellerShape } from "../../physics/index.ts";
import type { FlightLoad, HeatDriver, LeftOutRun, Measures } from "../analysis/index.ts";
import type { Range } from "./range.ts";

/** What a part was measured to be over some flights. */
export interface KnownValue extends Range {
  /** How many flights (bench runs among them) it rests on, 1 or more. */
  readonly flights: number;
}

/** The pack as logged. */
export interface KnownPack {
  readonly cells: number;
  readonly capacityMah: number | null;
  /** Ten seconds after a step, whole pack. */
  readonly resistance10sMohm: KnownValue | null;
  /** Open-circuit volts of a full cell before its first run. */
  readonly startCellV: KnownValue | null;
}

/** What one propeller showed on this aircraft. */
export interface FlownPropeller {
  /** Null where the facts of those flights do not describe it. */
  readonly shape: PropellerShape | null;
  readonly flights: number;
  readonly powerCoefficient: KnownValue | null;
  readonly staticCurrentA: KnownValue | null;
  /** Mean current of a flight over the static current. */
  readonly cruiseShare: KnownValue | null;
  /** Peak of the controller above the air on the hot day, degC. */
  readonly controllerRiseC: KnownValue | null;
}

export interface KnownController {
  readonly risePerA2: KnownValue;
  readonly timeConstantS: KnownValue | null;
  readonly driver: HeatDriver;
}

export interface FullThrottlePoint {
  readonly packV: number;
  /** One motor's share, A. */
  readonly motorA: number;
}

/** What logs (or later a book) say about the parts; whatever is null has to come from published ranges. */
export interface KnownParts {
  readonly pack: KnownPack | null;
  /** Speed constant at full throttle, rev/min per volt, for the stated path resistance. */
  readonly kv: KnownValue | null;
  /** Means of the full-throttle runs that the speed constant rests on. */
  readonly fullThrottle: FullThrottlePoint | null;
  readonly controller: KnownController | null;
  /** By propeller, the one with most flights first. */
  readonly flown: readonly FlownPropeller[];
  /** Charge of a flight outside take-off to touchdown, mAh. */
  readonly groundChargeMah: KnownValue | null;
  /** Flights that do not count, since their current is not to be believed. */
  readonly leftOut: readonly LeftOutRun[];
}

export const NOTHING_KNOWN: KnownParts = {
  pack: null,
  kv: null,
  fullThrottle: null,
  controller: null,
  flown: [],
  groundChargeMah: null,
  leftOut: [],
};

/** One logged flight or bench run with the facts it was judged with. */
export interface LoggedFlight {
  readonly kind: "flight" | "benchRun";
  readonly complete: boolean;
  readonly measures: Measures;
  readonly facts: Facts;
  /** Name of the pack that flew; absent or null where nobody told. */
  readonly pack?: string | null;
  /** Present where the charge left and the resting volts after landing cannot both be right. */
  readonly isChargeDoubtful?: true;
  /** Carries the same mark in books of older releases. */
  readonly load?: Pick<FlightLoad, "isChargeDoubtful"> | null;
}

/** One that can be named where it does not count. */
export interface NamedFlight extends LoggedFlight {
  readonly name: string;
}
