/** Conditions of the day that no sensor logs. */
export interface DayFacts {
  /** Air temperature of the day, degC; null when nobody said. */
  readonly ambientC: number | null;
  /** State of charge at the start, percent; null when nobody said. */
  readonly startPct: number | null;
}
