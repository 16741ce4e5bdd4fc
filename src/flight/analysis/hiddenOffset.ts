/** Idle current that a negative reading at rest may hide, amperes: nothing to one ampere. */
export const LARGEST_HIDDEN_IDLE_A = 1;

/** How much more than it reads the current may be, amperes, where the sensor reads `offsetA` at rest; 0 from zero up. */
export function hiddenOffsetA(offsetA: number): number {
  return offsetA < 0 ? LARGEST_HIDDEN_IDLE_A - offsetA : 0;
}
