/** What one flight asked of the pack, for the timer of the next one. Null parts could not be measured. */
export interface FlightLoad {
  /** Take-off to the end of take-off and climb power, s and mAh. */
  readonly climbS: number;
  readonly climbChargeMah: number;
  /** Charge rate from there to touchdown, mAh per second. */
  readonly rateMahPerS: number;
  /** Charge of the window outside take-off to touchdown, upper bound, mAh. */
  readonly groundChargeMah: number;
  /** Approach and landing, s; from power alone the upper end of what the power allows. */
  readonly approachS: number;
  /** Largest current from take-off to touchdown, A. */
  readonly peakCurrentA: number;
  /** Mean square current from take-off to touchdown, A^2. */
  readonly meanSquareCurrentA2: number;
  /** Mean of the driver that `controllerRisePerA2` names over the same time, A^2; null where that is null. */
  readonly meanDriverA2: number | null;
  /** True where the charge left and the resting volts after landing cannot both be right; absent where they can. */
  readonly isChargeDoubtful?: true;
}
