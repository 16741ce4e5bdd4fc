import type { HeatDriver } from "./measures.ts";
import type { MotorLoad } from "./motorLoad.ts";
import type { SensorTiming } from "./packResistanceTiming.ts";
import type { RowRange } from "./segments.ts";

/** What may heat the controller, in ampere squared at each row, with the half-width of its scale. */
export type HeatDrivers = readonly {
  readonly name: HeatDriver;
  readonly ofRow: (row: number) => number;
  /** Of the current (not its square), relative, 95 %, the current sensor's own gain left out. */
  readonly relativeHalfWidth: number;
  /** How late the log tells it, seconds. */
  readonly delayS: number;
}[];

/**
 * The square of the pack current, and either that of the motor current where it is known or its stand-in: with a
 * propeller the motor current goes as the pack current to the power 2/3, taken equal at full throttle.
 */
export function heatDrivers(
  packA: Float64Array,
  range: RowRange,
  motorLoad: MotorLoad | null,
  timing: SensorTiming | null,
): HeatDrivers {
  // The series of the motor current is put right for the shift already.
  const filterS = timing?.filterS ?? 0;
  const delayS = filterS + (timing?.shiftS ?? 0);
  const squared = {
    name: "packCurrent",
    ofRow: (row: number) => packA[row]! ** 2,
    relativeHalfWidth: 0,
    delayS,
  } as const;
  const series = motorLoad?.series ?? null;
  if (series !== null && motorLoad!.wrongSetting === null) {
    const { motorCurrentA, firstRow } = series;
    const scale = motorLoad!.motorCurrentScale;
    const ofRow = (row: number) => (scale.factor * motorCurrentA[row - firstRow]!) ** 2;
    return [
      squared,
      { name: "motorCurrent", ofRow, relativeHalfWidth: scale.relativeHalfWidth, delayS: filterS },
    ];
  }
  const fullA = highestCurrent(packA, range);
  const ofRow = (row: number) => fullA ** (2 / 3) * Math.max(0, packA[row]!) ** (4 / 3);
  return [squared, { name: "powerFourThirds", ofRow, relativeHalfWidth: 0, delayS }];
}

/** The highest median of three neighbours: a single odd row does not set it. */
function highestCurrent(packA: Float64Array, { firstRow, lastRow }: RowRange): number {
  let highest = 0;
  for (let row = firstRow + 2; row <= lastRow; row++) {
    const [a, b, c] = [packA[row - 2]!, packA[row - 1]!, packA[row]!];
    const middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    if (middle > highest) highest = middle;
  }
  return highest;
}
