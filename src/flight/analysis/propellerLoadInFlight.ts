import type { Facts } from "../../aircraft/facts.ts";
import { known, METRES_PER_INCH, type Quantity, revPerSecond, unknown } from "../../base/quantity/index.ts";
import { medianInPlace } from "../../base/statistics/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { powerCoefficient } from "../../physics/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import { NO_DIAMETER, NO_FLIGHT_ROWS, wrongSettingStops } from "./identifiedSentences.ts";
import { CONSTANTS_HALF_WIDTH, type DayAir } from "./motorLoadConstants.ts";
import type { MotorSeries } from "./motorLoadSeries.ts";
import type { RowRange } from "./segments.ts";
import type { WrongSetting } from "./wrongSetting.ts";

/** What the propeller and the motor do in the air. */
export interface InFlightLoad {
  /** Median shaft power over rho n^3 D^5 in the air. */
  readonly powerCoefficient: Quantity;
  /** The same as a share of the static one: below 1 the blades unload. */
  readonly shareOfStatic: Quantity;
  /** Median share of pack power that reaches the shaft, percent. */
  readonly efficiencyPct: Quantity;
}

/** Rows with the controller less open than this are approaches and glides. */
const LEAST_DUTY = 0.4;
const LEAST_ROWS = 20;

/** Medians over the rows in the air with the motor pulling. */
export function inFlightLoad(
  series: MotorSeries | null,
  recording: Recording,
  rows: RowRange | null,
  facts: Facts,
  air: DayAir,
  atRest: { readonly propellerPowerCoefficient: Quantity },
  wrong: WrongSetting | null,
): InFlightLoad {
  if (wrong !== null) return noInFlightLoad(wrongSettingStops(wrong.duty));
  const speedRpm = workingChannel(recording, "shaftSpeed");
  if (series === null || rows === null || speedRpm === null) return noInFlightLoad(NO_FLIGHT_ROWS);
  const { diameterIn } = facts.propeller;
  const coefficients: number[] = [];
  const efficiencies: number[] = [];
  const last = Math.min(rows.lastRow, series.firstRow + series.duty.length - 1);
  for (let row = Math.max(rows.firstRow, series.firstRow); row <= last; row++) {
    const k = row - series.firstRow;
    if (!(series.duty[k]! >= LEAST_DUTY)) continue;
    efficiencies.push(series.efficiency[k]!);
    if (diameterIn === null) continue;
    const turns = revPerSecond(speedRpm[row]!);
    coefficients.push(
      powerCoefficient(series.shaftPowerW[k]!, air.density, turns, diameterIn * METRES_PER_INCH),
    );
  }
  if (efficiencies.length < LEAST_ROWS) return noInFlightLoad(NO_FLIGHT_ROWS);
  return described(medianOf(coefficients), medianOf(efficiencies), facts, air, atRest);
}

function described(
  coefficient: number,
  efficiency: number,
  { sensors }: Facts,
  air: DayAir,
  { propellerPowerCoefficient: still }: { readonly propellerPowerCoefficient: Quantity },
): InFlightLoad {
  const gain = Math.hypot(sensors.currentAccuracyPct, sensors.voltageAccuracyPct) / 100;
  const losses = 1 - efficiency;
  const ofMotor = losses * Math.hypot(CONSTANTS_HALF_WIDTH.ohm / 2, CONSTANTS_HALF_WIDTH.noLoad);
  const relative = Math.hypot(gain, ofMotor, air.relativeHalfWidth);
  const percent = 100 * efficiency;
  if (Number.isNaN(coefficient)) {
    return {
      ...noInFlightLoad(NO_DIAMETER),
      efficiencyPct: known(percent, ofMotor * percent, "%", "derived"),
    };
  }
  return {
    powerCoefficient: known(coefficient, relative * coefficient, "1", "derived"),
    // Gains and air cancel in the share; what the constants do differently at part throttle stays.
    shareOfStatic:
      still.value === null
        ? unknown("1", still.why)
        : known(coefficient / still.value, (ofMotor * coefficient) / still.value, "1", "derived"),
    efficiencyPct: known(percent, ofMotor * percent, "%", "derived"),
  };
}

export function noInFlightLoad(why: string): InFlightLoad {
  return {
    powerCoefficient: unknown("1", why),
    shareOfStatic: unknown("1", why),
    efficiencyPct: unknown("%", why),
  };
}

function medianOf(values: readonly number[]): number {
  const finite = Float64Array.from(values).filter((value) => Number.isFinite(value));
  return finite.length === 0 ? Number.NaN : medianInPlace(finite);
}
