import type { Quantity } from "../../base/quantity/index.ts";
import type { LeftOutFlight } from "../timer/index.ts";
import type { Alarm } from "./watch.ts";

export type TrendMeasure =
  | "controllerRisePerA2"
  | "controllerTimeConstantS"
  | "packResistanceMohm"
  | "chargeRateMahPerS"
  | "propellerPowerCoefficient";

export type TrendVerdict = "rising" | "falling" | "shifted" | "no change shown" | "not judged";

/** What the flights of one series have in common; null where the measure does not depend on it. */
export interface TrendOf {
  readonly pack: string | null;
  readonly propeller: string | null;
  /** Ratings of the controller, e.g. "100 A"; null where the aircraft file gives none. */
  readonly controller: string | null;
}

export interface TrendPoint {
  readonly flight: string;
  readonly value: number;
  /** 95 % interval; null where this flight alone does not bound it. */
  readonly low: number | null;
  readonly high: number | null;
}

/** A limit that the series will meet if it goes on, counted in flights from the last point. */
export interface TrendCrossing {
  readonly limit: string;
  /** What the measure itself comes to then, in its unit. */
  readonly limitValue: number;
  readonly flights: number;
  readonly soonest: number;
  readonly latest: number;
}

/** One measure over the flights of one fitting, in order. */
export interface TrendSeries {
  readonly measure: TrendMeasure;
  readonly of: TrendOf;
  readonly points: readonly TrendPoint[];
  /** Theil-Sen slope with its 95 % interval, in the measure's unit per flight (per charge for a pack). */
  readonly slopePerFlight: Quantity;
  readonly verdict: TrendVerdict;
  /** What raised the verdict; null without an alarm. */
  readonly alarm: Alarm | null;
  readonly crossing: TrendCrossing | null;
  readonly text: string;
}

/** The JSON result of `trend`: format tallywatt/trend, version 1. */
export interface TrendResult {
  readonly format: "tallywatt/trend";
  readonly version: 1;
  readonly aircraft: string;
  readonly series: readonly TrendSeries[];
  /** Flights that no series holds, since their current is not to be believed. */
  readonly leftOut: readonly LeftOutFlight[];
  /** The last flight against the one before it on this fitting, in one line; null with fewer than two. */
  readonly sinceLastFlight: string | null;
  readonly text: string;
}
