/** Heating of the controller under the counted flights' load on the hottest day. */
export interface HeatConditions {
  readonly hotDayC: number;
  readonly limitC: number;
  /** Steady rise per square ampere of pack current, upper end, degC/A^2. */
  readonly risePerA2: number;
  readonly timeConstantS: number;
  /** Largest mean square current of the counted flights, A^2. */
  readonly meanSquareCurrentA2: number;
  /** How much the peaks of a flight stand above the steady heating by its mean square current, degC. */
  readonly rippleC: number;
}

/**
 * Touchdown, s from take-off, at which the controller reaches its limit on the hottest day, flown at the
 * counted flights' load (first-order heating). Null when the steady temperature stays below the limit.
 */
export function temperatureLimitS(conditions: HeatConditions): number | null {
  const roomC = conditions.limitC - conditions.hotDayC - conditions.rippleC;
  const steadyRiseC = conditions.risePerA2 * conditions.meanSquareCurrentA2;
  if (roomC <= 0) return 0;
  if (steadyRiseC <= roomC) return null;
  return -conditions.timeConstantS * Math.log(1 - roomC / steadyRiseC);
}
