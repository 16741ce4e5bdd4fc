import { isKnown, type Quantity } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { usedCharge } from "./charge.ts";
import { chargeLeft } from "./chargeLeft.ts";
import { usedEnergy } from "./energy.ts";
import { estimatedAs } from "./estimatedSentences.ts";
import { flightCharge, meanCurrent } from "./flightCharge.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Measures } from "./measures.ts";
import { peakCurrent, peakPower } from "./peaks.ts";
import { type EstimatedCurrent, estimateCurrent, type KnownCoefficient } from "./propellerLoadCurrent.ts";
import { publishedCoefficient } from "./publishedCoefficient.ts";
import { rowsWithin } from "./rowsBetween.ts";
import { isSpeedBelievable } from "./speedBelievable.ts";
import { staticMeasures } from "./staticMeasures.ts";

export type EstimatedName =
  | "peakCurrentA"
  | "meanCurrentA"
  | "chargeUsedMah"
  | "flightChargeMah"
  | "staticCurrentA"
  | "staticPowerW"
  | "powerLoadingWPerKg"
  | "peakPowerW"
  | "energyUsedWh"
  | "chargeLeftPct";

/**
 * What a log without a current channel still says of current, charge and power: from shaft speed, pack volts and
 * the power coefficient published for the kind of propeller. Empty when the log has a current column (a dead
 * sensor says nothing either), when facts are missing, or when the speed cannot belong to this motor.
 */
export function estimatedMeasures(context: FlightContext): Partial<Pick<Measures, EstimatedName>> {
  const { recording, rows, group } = context;
  const coefficient = knownCoefficient(context);
  if (hasCurrentColumn(recording) || group === null || coefficient === null) return {};
  const { estimate } = estimateCurrent(recording, rows, context.facts, context.day, coefficient);
  if (estimate === null || !isSpeedBelievable(context, estimate.currentA)) return {};
  unloadInAir(context, coefficient, estimate);
  return measuresWith(context, estimate);
}

/**
 * Share of its static power coefficient that a propeller takes in the air, over a flight (common practice, no
 * published source); the spread about it is in the estimate's half-width.
 */
const SHARE_IN_AIR = 0.8;
/** The take-off run begins at rest, with the static coefficient. */
const ROLLING_S = 3;

function unloadInAir(
  context: FlightContext,
  { value, halfWidth }: KnownCoefficient,
  whole: EstimatedCurrent,
): void {
  const { recording, facts, day, rows, shape } = context;
  if (shape === null) return;
  const { firstRow, lastRow } = rowsWithin(
    recording.timeS,
    shape.takeOff.value + ROLLING_S,
    shape.touchdown.value,
  );
  const inAir = { firstRow: Math.max(firstRow, rows.firstRow), lastRow: Math.min(lastRow, rows.lastRow) };
  if (inAir.firstRow > inAir.lastRow) return;
  const unloaded = { value: SHARE_IN_AIR * value, halfWidth: SHARE_IN_AIR * halfWidth };
  const { estimate } = estimateCurrent(recording, inAir, facts, day, unloaded);
  if (estimate !== null) whole.currentA.set(estimate.currentA, inAir.firstRow - whole.firstRow);
}

function hasCurrentColumn({ channels, dead }: Recording): boolean {
  return channels.has("current") || dead.some(({ channel }) => channel === "current");
}

function knownCoefficient({ facts }: FlightContext): KnownCoefficient | null {
  const published = publishedCoefficient(facts);
  return published && { value: published.value, halfWidth: (published.high - published.low) / 2 };
}

function measuresWith(
  context: FlightContext,
  estimate: EstimatedCurrent,
): Partial<Pick<Measures, EstimatedName>> {
  const flying = withCurrent(context, estimate, estimate.relativeHalfWidth);
  const standing = withCurrent(context, estimate, estimate.relativeHalfWidthAtRest);
  const { recording, rows, facts } = flying;
  const { staticCurrentA, staticPowerW, powerLoadingWPerKg } = staticMeasures(standing);
  const chargeUsedMah = usedCharge(recording, rows, facts, context);
  return {
    peakCurrentA: asEstimated(peakCurrent(recording, rows, facts)),
    meanCurrentA: asEstimated(meanCurrent(flying)),
    peakPowerW: asEstimated(peakPower(recording, rows, facts)),
    chargeUsedMah: asEstimated(chargeUsedMah),
    energyUsedWh: asEstimated(usedEnergy(recording, rows, facts, context)),
    flightChargeMah: asEstimated(flightCharge(flying)),
    chargeLeftPct: asEstimated(chargeLeft(context, chargeUsedMah)),
    staticCurrentA: asEstimated(staticCurrentA),
    staticPowerW: asEstimated(staticPowerW),
    powerLoadingWPerKg: asEstimated(powerLoadingWPerKg),
  };
}

/** The same flight with the estimate in the place of a current sensor whose gain is as uncertain. */
function withCurrent(context: FlightContext, estimate: EstimatedCurrent, halfWidth: number): FlightContext {
  const { recording, facts } = context;
  const current = new Float64Array(recording.rows).fill(Number.NaN);
  current.set(estimate.currentA, estimate.firstRow);
  return {
    ...context,
    recording: { ...recording, channels: new Map([...recording.channels, ["current", current]]) },
    facts: { ...facts, sensors: { ...facts.sensors, currentAccuracyPct: 100 * halfWidth } },
  };
}

function asEstimated(quantity: Quantity): Quantity {
  return isKnown(quantity) ? { ...quantity, basis: "estimated", why: estimatedAs(quantity.why) } : quantity;
}
