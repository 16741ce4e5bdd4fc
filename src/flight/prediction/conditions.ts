/** What a plan is made for beside the aircraft. */
export interface PlanConditions {
  /** Air of the day, degC; null when nobody said. */
  readonly ambientC: number | null;
  /** Height of the field, m; null takes the aircraft file's. */
  readonly elevationM: number | null;
  /** Share of the charge to land with. */
  readonly reservePct: number;
}
