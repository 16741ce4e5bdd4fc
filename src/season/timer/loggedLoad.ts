/** What one logged flight says about the next one's demand on the pack. */
export interface LoggedLoad {
  /** Name of the flight in the book. */
  readonly flight: string;
  /** Take-off to the end of the climb, s and mAh. */
  readonly climbS: number;
  readonly climbChargeMah: number;
  /** Charge rate from the end of the climb to touchdown, mAh per second. */
  readonly rateMahPerS: number;
  /** Charge outside take-off to touchdown (run-up, taxi, standby), upper bound, mAh. */
  readonly groundChargeMah: number;
  /** Approach and landing, s; from power alone the upper end. */
  readonly approachS: number;
  /** Largest current from take-off to touchdown, A. */
  readonly peakCurrentA: number;
}

/** The pack of the next flight and what must stay in it. */
export interface ChargeConditions {
  readonly capacityMah: number;
  /** 0..1; 1 unless stated. */
  readonly health: number;
  /** Share of the capacity in the pack at the start, 0..1. */
  readonly startShare: number;
  /** Share of the capacity to land with, 0..1. */
  readonly reserveShare: number;
  /** One standard deviation of the current sensor's gain, relative; 0 for an exact sensor. */
  readonly gainStandardDeviation: number;
}

/** The go-around that must stay possible: this long at the take-off and climb rate. */
export const GO_AROUND_S = 30;
/** Until this many flights are known, approach and landing are taken as DEFAULT_APPROACH_S or longer. */
export const FLIGHTS_FOR_APPROACH = 3;
export const DEFAULT_APPROACH_S = 45;
/** Fewer counted flights than this make a timer provisional. */
export const FLIGHTS_FOR_FULL_TIMER = 3;
