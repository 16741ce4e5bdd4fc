import { atLeast, between, highEnd, lowEnd, type Quantity, unknown } from "../../base/quantity/index.ts";
import { smallestStep } from "../../log/recording/index.ts";
import { channelOrWhy } from "./channelOrWhy.ts";
import { isAtCeiling } from "./currentAtCeiling.ts";
import type { FlightContext } from "./flightContext.ts";
import { hiddenOffsetA } from "./hiddenOffset.ts";
import { NO_FLYING_MASS, PLATEAU_HOLDS_NO_VALUE } from "./sentences.ts";
import { plateauMedian } from "./staticRun.ts";
import { sumBasis } from "./sumBasis.ts";
import { LOWER_BOUND_CEILING } from "./sumSentences.ts";

/**
 * staticCurrentA, staticPowerW, staticRpm: medians of the static run. powerLoadingWPerKg: its power over the mass.
 * Interval: sensor gain, steps, scatter, and upwards what a negative current at rest hides.
 */
export function staticMeasures(context: FlightContext): {
  staticCurrentA: Quantity;
  staticPowerW: Quantity;
  staticRpm: Quantity;
  powerLoadingWPerKg: Quantity;
} {
  const { recording, facts } = context;
  const amps = channelOrWhy(recording, "current");
  const volts = channelOrWhy(recording, "packVoltage");
  const revs = channelOrWhy(recording, "shaftSpeed");
  const gainA = facts.sensors.currentAccuracyPct / 100;
  const gainV = facts.sensors.voltageAccuracyPct / 100;
  const stepA = amps.values ? smallestStep(amps.values) : 0;
  const staticPowerW =
    amps.values === null
      ? unknown("W", amps.why)
      : volts.values === null
        ? unknown("W", volts.why)
        : staticMedian(
            context,
            "W",
            Math.hypot(gainA, gainV),
            0,
            power(amps.values, volts.values),
            hiddenOver(context, amps.values, valueAt(volts.values)),
          );
  return {
    staticCurrentA: amps.values
      ? staticMedian(
          context,
          "A",
          gainA,
          stepA,
          valueAt(amps.values),
          hiddenOver(context, amps.values, () => 1),
        )
      : unknown("A", amps.why),
    staticPowerW,
    staticRpm: revs.values
      ? staticMedian(context, "rev/min", 0, smallestStep(revs.values), valueAt(revs.values))
      : unknown("rev/min", revs.why),
    powerLoadingWPerKg: powerLoading(staticPowerW, facts.flyingMassKg),
  };
}

const valueAt = (values: Float64Array) => (row: number) => values[row]!;
const power = (amps: Float64Array, volts: Float64Array) => (row: number) => amps[row]! * volts[row]!;

function staticMedian(
  { staticRun }: FlightContext,
  unit: "A" | "W" | "rev/min",
  gainShare: number,
  step: number,
  valueAtRow: (row: number) => number,
  hidden: number | null = 0,
): Quantity {
  if (staticRun.firstRow === null) return unknown(unit, staticRun.why);
  const found = plateauMedian(valueAtRow, staticRun.firstRow, staticRun.lastRow);
  if (found === null) return unknown(unit, PLATEAU_HOLDS_NO_VALUE);
  const halfWidth = Math.hypot(gainShare * found.value, step / Math.sqrt(3), 2 * found.standardError);
  const low = found.value - halfWidth;
  const basis = unit === "W" ? "derived" : "measured";
  if (hidden === null) return atLeast(found.value, low, unit, basis, LOWER_BOUND_CEILING);
  return between(found.value, low, found.value + halfWidth + hidden, unit, basis);
}

/**
 * What a negative reading at rest may hide on the plateau: its amperes, or those times the volts there. Null, no
 * end, where the current reads the end of its sensor's range.
 */
function hiddenOver(
  { recording, staticRun }: FlightContext,
  amps: Float64Array,
  perAmpereAtRow: (row: number) => number,
): number | null {
  if (staticRun.firstRow === null) return 0;
  if (isAtCeiling(recording, amps, staticRun)) return null;
  const hiddenA = hiddenOffsetA(sumBasis(recording, amps).offsetA);
  if (hiddenA === 0) return 0;
  return hiddenA * (plateauMedian(perAmpereAtRow, staticRun.firstRow, staticRun.lastRow)?.value ?? 0);
}

function powerLoading(staticPowerW: Quantity, flyingMassKg: number | null): Quantity {
  if (staticPowerW.value === null) return unknown("W/kg", staticPowerW.why);
  if (flyingMassKg === null) return unknown("W/kg", NO_FLYING_MASS);
  const value = staticPowerW.value / flyingMassKg;
  const low = lowEnd(staticPowerW) / flyingMassKg;
  if (staticPowerW.high === null) return atLeast(value, low, "W/kg", "derived", staticPowerW.why ?? "");
  return between(value, low, highEnd(staticPowerW) / flyingMassKg, "W/kg", "derived");
}
