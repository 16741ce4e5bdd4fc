import { middleOf } from "../../base/statistics/index.ts";
import type { HeatDriver } from "./measures.ts";
import type { MotorLoad } from "./motorLoad.ts";
import type { SensorTiming } from "./packResistanceTiming.ts";
import type { RowRange } from "./segments.ts";

/** What may heat the controller, in ampere squared at each row, with the half-width of its scale. */
export type HeatDrivers = readonly HeatDriverRows[];

/** `factor` times a power of `gain` times the amps of each row; data, so that one loop serves them all. */
export interface HeatDriverRows {
  readonly name: HeatDriver;
  readonly amps: Float64Array;
  /** Row of the recording that `amps[0]` belongs to. */
  readonly firstRow: number;
  readonly gain: number;
  readonly power: 2 | typeof FOUR_THIRDS;
  /** What makes ampere squared of the power 4/3; 1 for a square. */
  readonly factor: number;
  /** Of the current (not its square), relative, 95 %, the current sensor's own gain left out. */
  readonly relativeHalfWidth: number;
  /** How late the log tells it, seconds. */
  readonly delayS: number;
}

const FOUR_THIRDS = 4 / 3;

/** The driver at a row without its factor. */
export function bareDriverAt({ amps, firstRow, gain, power }: HeatDriverRows, row: number): number {
  const value = gain * amps[row - firstRow]!;
  return power === 2 ? value ** 2 : Math.max(0, value) ** FOUR_THIRDS;
}

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
  const ofPack = { amps: packA, firstRow: 0, gain: 1, relativeHalfWidth: 0, delayS };
  const squared = { name: "packCurrent", ...ofPack, power: 2, factor: 1 } as const;
  const series = motorLoad?.series ?? null;
  if (series !== null && motorLoad!.wrongSetting === null) {
    const { motorCurrentA, firstRow } = series;
    const { factor, relativeHalfWidth } = motorLoad!.motorCurrentScale;
    const ofMotor = { amps: motorCurrentA, firstRow, gain: factor, relativeHalfWidth, delayS: filterS };
    return [squared, { name: "motorCurrent", ...ofMotor, power: 2, factor: 1 }];
  }
  const factor = highestCurrent(packA, range) ** (2 / 3);
  return [squared, { name: "powerFourThirds", ...ofPack, power: FOUR_THIRDS, factor }];
}

/** The highest median of three neighbours: a single odd row does not set it. */
function highestCurrent(packA: Float64Array, { firstRow, lastRow }: RowRange): number {
  let highest = 0;
  for (let row = firstRow + 2; row <= lastRow; row++) {
    const middle = middleOf(packA[row - 2]!, packA[row - 1]!, packA[row]!);
    if (middle > highest) highest = middle;
  }
  return highest;
}
