/** What the charger says about the current sensor: true amps = logged amps times `gain`. */
export interface CurrentCalibration {
  readonly gain: number;
  /** 95 % interval. */
  readonly low: number;
  readonly high: number;
  readonly putBacks: number;
  /** True when the interval leaves 1 out: then charges of the book are corrected by it. */
  readonly isApplied: boolean;
  /** True when the put-backs differ too much from each other to say anything: then nothing is corrected. */
  readonly isScattered: boolean;
  /** Flights whose put-back could not be used, and why. */
  readonly leftOut: readonly { readonly flight: string; readonly why: string }[];
}
