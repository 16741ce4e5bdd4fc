import {
  between,
  isKnown,
  type KnownQuantity,
  known,
  METRES_PER_INCH,
  type Quantity,
  revPerSecond,
  unknown,
} from "../../base/quantity/index.ts";
import {
  backVoltageV,
  type FullThrottle,
  fullThrottleEquilibrium,
  type MotorConstants,
  noLoadCurrentA,
  type PowerTrain,
  propellerPowerW,
} from "../../physics/index.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import { LINES_DO_NOT_MEET, NO_DIAMETER, NO_STEADY_POINT } from "./identifiedSentences.ts";
import { type LoadVolts, loadVolts } from "./loadVolts.ts";
import type { Measures } from "./measures.ts";
import { CONSTANTS_HALF_WIDTH, dayAir, motorConstants } from "./motorLoadConstants.ts";
import { publishedCoefficient } from "./publishedCoefficient.ts";

/** A current at each shaft speed, of one motor. */
export interface SpeedLine {
  readonly speedRpm: Float64Array;
  readonly currentA: Float64Array;
}

/**
 * Current of one motor against shaft speed at full throttle: what the motor gives on this pack, what the propeller
 * asks for at rest, and where both meet.
 */
export interface LoadLines {
  readonly motor: SpeedLine;
  readonly propeller: SpeedLine;
  /** The propeller's at either end of its coefficient's interval. */
  readonly propellerLow: SpeedLine;
  readonly propellerHigh: SpeedLine;
  /** Where the lines meet, its interval from the constants, the propeller and the pack. */
  readonly meetsRpm: Quantity;
  readonly meetsA: Quantity;
  /** The static run as logged (or estimated), one motor's share. */
  readonly staticRpm: Quantity;
  readonly staticA: Quantity;
  /** Limits in these terms, null where the aircraft file gives none. */
  readonly controllerA: number | null;
  readonly powerLimitA: number | null;
  readonly powerLimitW: number | null;
  readonly maxRpm: number | null;
  /** Power coefficient behind the propeller's line: measured, else predicted for its kind from published ones. */
  readonly coefficient: Quantity;
  readonly motorCount: number;
}

export type LoadLinesOrWhy =
  | { readonly lines: LoadLines; readonly why: null }
  | { readonly lines: null; readonly why: string };

const POINTS = 41;
/** The lines are drawn from this share of the speed they meet at to a little beyond the fastest of interest. */
const FROM_SHARE = 0.25;
const BEYOND = 1.04;

export function loadLines(
  context: FlightContext,
  identified: Identified,
  measures: Measures,
): LoadLinesOrWhy {
  const { facts, day, staticRun } = context;
  const none = (why: string): LoadLinesOrWhy => ({ lines: null, why });
  const constants = motorConstants(facts);
  if (constants.motor === null) return none(constants.why);
  if (staticRun.firstRow === null) return none(staticRun.why);
  const coefficient = coefficientOf(context, measures);
  if (coefficient === null || facts.propeller.diameterIn === null) return none(NO_DIAMETER);
  const volts = loadVolts(context, identified, measures);
  if (volts === null) return none(NO_STEADY_POINT);
  const train: PowerTrain = {
    openCircuitV: volts.openCircuitV,
    packOhm: volts.packOhm,
    motor: constants.motor,
    motorCount: facts.motor.count,
    powerCoefficient: coefficient.value,
    diameterM: facts.propeller.diameterIn * METRES_PER_INCH,
    density: dayAir(facts, day).density,
  };
  const meets = meetingPoint(train, coefficient, volts);
  if (meets === null) return none(LINES_DO_NOT_MEET);
  return { lines: linesOf(train, coefficient, meets, context, measures), why: null };
}

function linesOf(
  train: PowerTrain,
  coefficient: Coefficient,
  meets: Pick<LoadLines, "meetsRpm" | "meetsA">,
  { facts }: FlightContext,
  { staticRpm, staticCurrentA }: Measures,
): LoadLines {
  const { motor, motorCount } = train;
  const fastest = train.openCircuitV * motor.kvRpmPerV;
  const logged = isKnown(staticRpm) ? staticRpm.value : 0;
  const meetsRpm = meets.meetsRpm.value ?? fastest;
  const from = FROM_SHARE * Math.min(meetsRpm, logged > 0 ? logged : meetsRpm);
  const to = BEYOND * Math.max(fastest, facts.propeller.maxRpm ?? 0, logged);
  const speedRpm = Float64Array.from({ length: POINTS }, (_, k) => from + ((to - from) * k) / (POINTS - 1));
  const asked = (value: number): SpeedLine => ({
    speedRpm,
    currentA: speedRpm.map((rpm) => askedA(train, value, revPerSecond(rpm))),
  });
  return {
    motor: motorLine(train, speedRpm),
    propeller: asked(coefficient.value),
    propellerLow: asked(coefficient.low),
    propellerHigh: asked(coefficient.high),
    ...meets,
    staticRpm,
    staticA: shareOf(staticCurrentA, motorCount),
    controllerA: facts.controller.continuousA === null ? null : facts.controller.continuousA / motorCount,
    powerLimitA: facts.motor.maxPowerW === null ? null : currentAtPower(train, facts.motor.maxPowerW),
    powerLimitW: facts.motor.maxPowerW,
    maxRpm: facts.propeller.maxRpm,
    coefficient,
    motorCount,
  };
}

/** The measured coefficient; else the one published for its kind. Null without the propeller's size. */
function coefficientOf(
  { facts }: FlightContext,
  { propellerPowerCoefficient: found }: Measures,
): Coefficient | null {
  if (isBounded(found)) return found;
  const published = publishedCoefficient(facts);
  if (published === null) return null;
  const quantity = between(published.value, published.low, published.high, "1", "predicted");
  return isBounded(quantity) ? quantity : null;
}

type Coefficient = KnownQuantity & { readonly low: number; readonly high: number };

function isBounded(quantity: Quantity): quantity is Coefficient {
  return isKnown(quantity) && quantity.low !== null && quantity.high !== null;
}

/** Im = (Voc - w/kv) / (R + n Rpack), a straight line; NaN beyond the first speed at which no current is left. */
function motorLine(
  { openCircuitV, packOhm, motor, motorCount }: PowerTrain,
  speedRpm: Float64Array,
): SpeedLine {
  const totalOhm = motor.pathOhm + motorCount * packOhm;
  const currentA = speedRpm.map((rpm) => (openCircuitV - rpm / motor.kvRpmPerV) / totalOhm);
  return { speedRpm, currentA: currentA.map((amps, k) => (currentA[k - 1]! < 0 ? Number.NaN : amps)) };
}

/** Current that the propeller needs at a speed: its power over the back voltage, and the no-load current. */
function askedA(
  { density, diameterM, motor, openCircuitV }: PowerTrain,
  coefficient: number,
  turns: number,
): number {
  const shaftW = propellerPowerW(coefficient, density, turns, diameterM);
  return shaftW / backVoltageV(turns, motor.kvRpmPerV) + noLoadCurrentA(motor.noLoadA, openCircuitV);
}

/** Current of one motor that draws this power from the sagging pack; null where the pack cannot give it. */
function currentAtPower({ openCircuitV, packOhm, motorCount }: PowerTrain, powerW: number): number | null {
  const ohm = motorCount * packOhm;
  const root = openCircuitV ** 2 - 4 * ohm * powerW;
  return root >= 0 ? (2 * powerW) / (openCircuitV + Math.sqrt(root)) : null;
}

function meetingPoint(
  train: PowerTrain,
  { value, low, high }: Coefficient,
  volts: LoadVolts,
): Pick<LoadLines, "meetsRpm" | "meetsA"> | null {
  const { motor, motorCount } = train;
  const at = fullThrottleEquilibrium(train);
  if (at === null) return null;
  const withMotor = (changed: Partial<MotorConstants>) => ({ ...train, motor: { ...motor, ...changed } });
  const { kv, ohm, noLoad } = CONSTANTS_HALF_WIDTH;
  const moved = [
    { ...train, powerCoefficient: value + Math.max(high - value, value - low) },
    { ...train, openCircuitV: train.openCircuitV * (1 + volts.relativeHalfWidth) },
    { ...train, packOhm: train.packOhm + volts.packHalfWidthOhm },
    withMotor({ kvRpmPerV: motor.kvRpmPerV * (1 + kv) }),
    withMotor({ pathOhm: motor.pathOhm * (1 + ohm) }),
    withMotor({ noLoadA: motor.noLoadA * (1 + noLoad) }),
  ].flatMap((one) => fullThrottleEquilibrium(one) ?? []);
  const spread = (of: (point: FullThrottle) => number) => Math.hypot(...moved.map((one) => of(one) - of(at)));
  return {
    meetsRpm: known(60 * at.speedRevPerS, 60 * spread((one) => one.speedRevPerS), "rev/min", "predicted"),
    meetsA: known(at.packA / motorCount, spread((one) => one.packA) / motorCount, "A", "predicted"),
  };
}

function shareOf(quantity: Quantity, count: number): Quantity {
  if (!isKnown(quantity) || count === 1) return quantity;
  const { value, low, high } = quantity;
  if (low === null || high === null) return unknown(quantity.unit, NO_STEADY_POINT);
  return { ...quantity, value: value / count, low: low / count, high: high / count };
}
