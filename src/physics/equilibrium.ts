import { rootOf } from "../base/statistics/index.ts";
import { backVoltageV, type MotorConstants, noLoadCurrentA } from "./motor.ts";
import { propellerPowerW } from "./propeller.ts";

/** Everything that settles the full-throttle point at rest. */
export interface PowerTrain {
  /** Open-circuit volts of the pack. */
  readonly openCircuitV: number;
  /** Pack resistance for a load of this length, ohm: R(10 s) for a run-up, 0 or more. */
  readonly packOhm: number;
  readonly motor: MotorConstants;
  /** Motors on the pack, each with its own propeller. */
  readonly motorCount: number;
  readonly powerCoefficient: number;
  readonly diameterM: number;
  /** Air density, kg/m3. */
  readonly density: number;
}

/** The full-throttle point at rest. */
export interface FullThrottle {
  /** Out of the pack, all motors. */
  readonly packA: number;
  /** At the pack's terminals under that load. */
  readonly packV: number;
  /** Pack volts times pack amps. */
  readonly packPowerW: number;
  readonly speedRevPerS: number;
  /** Of all motors. */
  readonly shaftPowerW: number;
  /** Shaft power over pack power, 0 to 1. */
  readonly efficiency: number;
}

/**
 * Where motor and propeller agree at full throttle (duty 1): w/kv = V - Im R and
 * (Im - I0) w/kv = CP rho n^3 D^5 with V = Voc - I R(pack). The surplus of shaft power per turn falls steadily
 * with speed, so the root between standstill and the speed of w/kv = Voc is the only one.
 * Null when a constant is not a positive number or the supply cannot turn the motor against its no-load current.
 */
export function fullThrottleEquilibrium(train: PowerTrain): FullThrottle | null {
  const { openCircuitV, packOhm, motor, motorCount } = train;
  const positive = [openCircuitV, motor.kvRpmPerV, motor.pathOhm, motorCount, train.powerCoefficient];
  if (![...positive, train.diameterM, train.density].every((value) => value > 0)) return null;
  if (!(packOhm >= 0 && motor.noLoadA >= 0)) return null;
  const totalOhm = motor.pathOhm + motorCount * packOhm;
  const currentAt = (speed: number) => (openCircuitV - backVoltageV(speed, motor.kvRpmPerV)) / totalOhm;
  const packVAt = (speed: number) => openCircuitV - motorCount * currentAt(speed) * packOhm;
  const surplusPerTurn = (speed: number) => {
    const excessA = currentAt(speed) - noLoadCurrentA(motor.noLoadA, packVAt(speed));
    const asked = propellerPowerW(train.powerCoefficient, train.density, speed, train.diameterM);
    return excessA * backVoltageV(1, motor.kvRpmPerV) - (speed === 0 ? 0 : asked / speed);
  };
  const fastest = openCircuitV / backVoltageV(1, motor.kvRpmPerV);
  const speed = rootOf(surplusPerTurn, 0, fastest);
  if (speed === null || speed === 0) return null;
  const packA = motorCount * currentAt(speed);
  const packV = packVAt(speed);
  const shaftPowerW =
    motorCount * propellerPowerW(train.powerCoefficient, train.density, speed, train.diameterM);
  return {
    packA,
    packV,
    packPowerW: packA * packV,
    speedRevPerS: speed,
    shaftPowerW,
    efficiency: shaftPowerW / (packA * packV),
  };
}
