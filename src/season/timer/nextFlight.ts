/** The flight that the timer is for. */
export interface NextFlight {
  readonly pack: string | null;
  /** Air temperature to reckon with, degC; null: the aircraft file's hot day. */
  readonly ambientC: number | null;
  readonly reservePct: number;
  /** State of charge at the start, percent; null: full. */
  readonly startPct: number | null;
}
