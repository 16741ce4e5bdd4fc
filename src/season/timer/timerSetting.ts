import type { LeftOutFlight } from "./countedFlights.ts";

export type LimitName = "charge" | "voltage" | "temperature";

export interface TimerLimit {
  readonly by: LimitName;
  /** Seconds from take-off, whole; null with `why` when not reached or not known. */
  readonly touchdownByS: number | null;
  readonly why?: string;
  /** The counted flights that decide it; absent where none does. */
  readonly flights?: readonly string[];
}

/** One term of the sum behind the setting, in words with its number. */
export interface TimerTerm {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
}

/** The JSON result of `timer`: format tallywatt/timer, version 1. */
export interface TimerSetting {
  readonly format: "tallywatt/timer";
  readonly version: 1;
  readonly aircraft: string;
  readonly pack: string | null;
  /** How many flights it rests on. */
  readonly flights: number;
  /** From opening the throttle for take-off until the approach must begin; null with `why`. */
  readonly timerS: number | null;
  readonly touchdownByS: number | null;
  readonly cautiousTimerS: number | null;
  readonly binding: LimitName | null;
  readonly limits: readonly TimerLimit[];
  /** Air that it is reckoned for, degC, and whether that is the aircraft file's hot day. */
  readonly ambientC: number;
  readonly isHotDay: boolean;
  readonly coverage: number;
  readonly reservePct: number;
  readonly provisional: boolean;
  readonly leftOut: readonly LeftOutFlight[];
  /** Each part of the sum of the charge limit. */
  readonly explained: readonly TimerTerm[];
  /** Seconds that one more flight like these would add; null where the charge does not bind. */
  readonly oneMoreFlightS: number | null;
  readonly why?: string;
  readonly text: string;
}
