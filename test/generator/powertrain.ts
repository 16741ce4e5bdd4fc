import type { TrueAircraft, TrueDay, TrueMotor, TruePack, TruePropeller } from "./aircraft.ts";

const METRE_PER_INCH = 0.0254;

/**
 * Rest voltage of one invented lithium-polymer cell, V, against state of charge 0 to 1 (1: 4.20 V, 0.5: about
 * 3.81 V, 0: about 3.2 V): a cubic, a knee at the empty end and a soft step in the middle.
 */
export function restCellVolts(charge: number): number {
  const knee = 0.45 * Math.exp(-22 * charge);
  const softStep = 0.02 / (1 + Math.exp(-(charge - 0.6) / 0.07));
  return 3.658 + 0.2 * charge + 0.3221 * charge ** 3 - knee + softStep;
}

/** Factor on pack resistance against 25 degC: half as much again at 10 degC. */
export function coldFactor(packC: number): number {
  return Math.exp(0.0282 * (25 - packC));
}

/** Dry air, kg/m3, from elevation (standard pressure there) and the day's temperature. */
export function airDensity(day: TrueDay): number {
  const pressurePa = 101_325 * (1 - day.elevationM / 44_330.8) ** 5.2559;
  return pressurePa / (287.053 * (day.ambientC + 273.15));
}

/** Power coefficient at airspeed `speedMS`: falls as the blades unload, to a tenth when they windmill. */
export function powerCoefficient(propeller: TruePropeller, speedMS: number, revPerS: number): number {
  if (revPerS < 1) return propeller.staticCp;
  const advance = speedMS / (revPerS * propeller.diameterIn * METRE_PER_INCH);
  const share = Math.min(1.2, advance / ((1.18 * propeller.pitchIn) / propeller.diameterIn));
  return propeller.staticCp * Math.max(0.1, 1 - 0.12 * share - 0.7 * share ** 3);
}

export interface OperatingPoint {
  /** rad/s. */
  readonly shaft: number;
  readonly motorA: number;
  readonly packA: number;
  readonly packV: number;
  /** At the shaft, W. */
  readonly shaftW: number;
}

interface Source {
  /** Pack volts behind its ohmic part. */
  readonly innerV: number;
  readonly ohmicOhm: number;
  readonly standbyA: number;
}

/**
 * Steady speed for a duty: motor torque less no-load torque equals propeller torque. The shaft settles within
 * about 0.05 s (inertia of such propellers), so each instant is taken as steady. Newton from the last speed.
 */
export function solveSpeed(
  duty: number,
  source: Source,
  aircraft: TrueAircraft,
  day: { readonly density: number; readonly speedMS: number },
  startShaft: number,
): OperatingPoint {
  const { motor, propeller, controller } = aircraft;
  const torquePerA = 60 / (2 * Math.PI * motor.kv);
  const pathOhm = motor.windingOhm + controller.resistanceOhm;
  const diameterM = propeller.diameterIn * METRE_PER_INCH;
  const drive = duty * (source.innerV - source.ohmicOhm * source.standbyA);
  const seriesOhm = pathOhm + duty * duty * source.ohmicOhm;
  const torqueGap = (shaft: number): number => {
    const motorA = (drive - torquePerA * shaft) / seriesOhm;
    const revPerS = shaft / (2 * Math.PI);
    const coefficient = powerCoefficient(propeller, day.speedMS, revPerS);
    const load = (coefficient * day.density * revPerS ** 2 * diameterM ** 5) / (2 * Math.PI);
    return torquePerA * (motorA - noLoadAmps(motor, shaft)) - load;
  };
  const shaft = fallingRoot(torqueGap, drive / torquePerA, startShaft);
  const motorA = (drive - torquePerA * shaft) / seriesOhm;
  const packA = duty * motorA + source.standbyA;
  const shaftW = torquePerA * (motorA - noLoadAmps(motor, shaft)) * shaft;
  return { shaft, motorA, packA, packV: source.innerV - source.ohmicOhm * packA, shaftW };
}

function noLoadAmps(motor: TrueMotor, shaft: number): number {
  const atTenVolts = (10 * motor.kv * 2 * Math.PI) / 60;
  return motor.noLoadA * (Math.max(shaft, 1) / atTenVolts) ** motor.noLoadGrowth;
}

/** Root of a falling function on 0..high: secant steps kept inside a shrinking bracket. */
function fallingRoot(gap: (x: number) => number, high: number, start: number): number {
  let below = 0;
  let above = high;
  let x = start > 0 && start < high ? start : 0.8 * high;
  for (let step = 0; step < 60; step += 1) {
    const value = gap(x);
    if (value > 0) below = x;
    else above = x;
    const reach = 1e-4 * high;
    const slope = (gap(x + reach) - value) / reach;
    let next = slope < 0 ? x - value / slope : (below + above) / 2;
    if (next <= below || next >= above) next = (below + above) / 2;
    if (Math.abs(next - x) < 1e-7 * high) return next;
    x = next;
  }
  return x;
}

/** Resistance seen `afterS` seconds after a step of current, ohm. */
export function stepResistance(pack: TruePack, factor: number, afterS: number): number {
  const fast = pack.fastOhm * (1 - Math.exp(-afterS / pack.fastS));
  const slow = pack.slowOhm * (1 - Math.exp(-afterS / pack.slowS));
  return factor * (pack.ohmicOhm + fast + slow);
}
