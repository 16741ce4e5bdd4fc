import { SECONDS_PER_MINUTE } from "../base/quantity/index.ts";

// The first-order motor: M. Drela, First-Order DC Electric Motor Model, MIT Aero and Astro, 2007.
// Behind a speed controller it is fed at a duty d of the pack's volts; the controller passes power on, so that
// pack volts times pack amps = motor amps^2 R + motor amps times w/kv.

/** Voltage at which the no-load current of a data sheet is taken to hold (common practice, no published source). */
export const NO_LOAD_VOLTS = 10;

/** Below this share of full voltage the model gives no efficiency: chopping losses are not in it. */
export const LEAST_DUTY_FOR_EFFICIENCY = 0.3;

/** A motor and the path from the pack's terminals to it. */
export interface MotorConstants {
  /** Speed constant, rev/min per volt. */
  readonly kvRpmPerV: number;
  /** Winding and controller in series, ohm, more than 0. */
  readonly pathOhm: number;
  /** Current at no load and 10 V, A. */
  readonly noLoadA: number;
}

/** Volts the turning motor sets against the supply: w / kv. */
export function backVoltageV(speedRevPerS: number, kvRpmPerV: number): number {
  return (speedRevPerS * SECONDS_PER_MINUTE) / kvRpmPerV;
}

/** No-load current, A, at another voltage: grows as the square root of the volts (bearings and iron between them). */
export function noLoadCurrentA(noLoadA: number, packV: number): number {
  return noLoadA * Math.sqrt(Math.max(0, packV) / NO_LOAD_VOLTS);
}

/**
 * Current in the motor, A: the positive root of Im^2 R + Im w/kv - V I = 0, written so that it keeps its digits
 * when R is small. NaN in any argument gives NaN.
 * @param packA standby current taken off already; one motor's share
 */
export function motorCurrentA(
  packV: number,
  packA: number,
  speedRevPerS: number,
  kvRpmPerV: number,
  pathOhm: number,
): number {
  const powerW = packV * packA;
  if (powerW === 0) return 0;
  const back = backVoltageV(speedRevPerS, kvRpmPerV);
  return (2 * powerW) / (back + Math.sqrt(back * back + 4 * pathOhm * powerW));
}

/** What the motor does at one moment of a log. */
export interface MotorState {
  readonly motorCurrentA: number;
  /** Share of the pack's volts that reaches the motor, pack amps over motor amps; 1 is full throttle. */
  readonly duty: number;
  readonly shaftPowerW: number;
  /** Shaft power over pack power, 0 to 1; null below a duty of 0.3 and without power. */
  readonly efficiency: number | null;
}

/** The state from what the log holds: pack volts, pack amps (standby taken off) and shaft speed in rev/s. */
export function motorState(
  packV: number,
  packA: number,
  speedRevPerS: number,
  motor: MotorConstants,
): MotorState {
  const current = motorCurrentA(packV, packA, speedRevPerS, motor.kvRpmPerV, motor.pathOhm);
  const duty = packA / current;
  const shaftPowerW =
    (current - noLoadCurrentA(motor.noLoadA, packV)) * backVoltageV(speedRevPerS, motor.kvRpmPerV);
  const isJudged = duty >= LEAST_DUTY_FOR_EFFICIENCY && packV * packA > 0;
  return {
    motorCurrentA: current,
    duty,
    shaftPowerW,
    efficiency: isJudged ? shaftPowerW / (packV * packA) : null,
  };
}

/** The motor on a supply of its own (duty 1), by its current. */
export interface MotorPoint {
  readonly speedRevPerS: number;
  readonly torqueNm: number;
  readonly shaftPowerW: number;
  /** 0 to 1; 0 at no load, negative below it. */
  readonly efficiency: number;
}

/**
 * Speed kv (V - I R), torque (I - I0) / kv, power and efficiency at a supply voltage and a motor current > 0.
 * `motor.noLoadA` is taken as it stands: the no-load current at this voltage.
 */
export function motorPoint(supplyV: number, currentA: number, motor: MotorConstants): MotorPoint {
  const back = supplyV - currentA * motor.pathOhm;
  const speedRevPerS = (motor.kvRpmPerV * back) / SECONDS_PER_MINUTE;
  const shaftPowerW = (currentA - motor.noLoadA) * back;
  const voltSecondsPerRadian = SECONDS_PER_MINUTE / (2 * Math.PI * motor.kvRpmPerV);
  return {
    speedRevPerS,
    torqueNm: (currentA - motor.noLoadA) * voltSecondsPerRadian,
    shaftPowerW,
    efficiency: shaftPowerW / (supplyV * currentA),
  };
}

/** Current of best efficiency, A: sqrt(I0 V / R). */
export function bestEfficiencyCurrentA(supplyV: number, motor: MotorConstants): number {
  return Math.sqrt((motor.noLoadA * supplyV) / motor.pathOhm);
}

/** Speed constant from one full-throttle reading, rev/min per volt: w / (V - I R). NaN when no volts are left. */
export function kvFromFullThrottle(
  packV: number,
  packA: number,
  speedRevPerS: number,
  pathOhm: number,
): number {
  const back = packV - packA * pathOhm;
  return back > 0 ? (speedRevPerS * SECONDS_PER_MINUTE) / back : Number.NaN;
}
