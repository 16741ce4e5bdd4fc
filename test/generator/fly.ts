import type { TrueAircraft, TrueDay } from "./aircraft.ts";
import { airDensity, coldFactor, type OperatingPoint, restCellVolts, solveSpeed } from "./powertrain.ts";
import type { Leg } from "./script.ts";

/** Inner step of the simulation, s. */
export const FINE_STEP_S = 0.02;

/** The state of the pack and its age when the log starts. */
export interface PackState {
  /** State of charge, 0 to 1. */
  readonly startCharge: number;
  /** Age: factor on every resistance of the pack. */
  readonly resistanceFactor: number;
  /** Sets the resistance for the whole log (it is held there: warming is not simulated in the resistance). */
  readonly temperatureC: number;
}

/** Everything that happened, every 0.02 s; the arrays have `steps` entries. */
export interface FineFlight {
  readonly steps: number;
  readonly packV: Float64Array;
  readonly packA: Float64Array;
  readonly motorA: Float64Array;
  readonly shaftW: Float64Array;
  /** rev/min. */
  readonly rpm: Float64Array;
  /** Duty of the controller, 0 to 1. */
  readonly duty: Float64Array;
  readonly controllerC: Float64Array;
  readonly motorC: Float64Array;
  readonly packC: Float64Array;
  readonly altitudeM: Float64Array;
  readonly speedMS: Float64Array;
  /** Rest volts of the pack at its charge of the moment. */
  readonly openV: Float64Array;
  /** Index of the leg. */
  readonly leg: Uint16Array;
  readonly legs: readonly Leg[];
  /** Which sortie a leg belongs to, 0, 1, … */
  readonly sortieOfLeg: readonly number[];
}

export interface FlightPlan {
  readonly aircraft: TrueAircraft;
  readonly day: TrueDay;
  readonly pack: PackState;
  readonly sorties: readonly (readonly Leg[])[];
  /** Controller above the air when the log starts, K. */
  readonly warmStartK: number;
}

function emptyFlight(plan: FlightPlan): FineFlight {
  const legs = plan.sorties.flat();
  const sortieOfLeg = plan.sorties.flatMap((sortie, index) => sortie.map(() => index));
  const steps = Math.round(legs.reduce((sum, leg) => sum + leg.lengthS, 0) / FINE_STEP_S) + 1;
  const column = () => new Float64Array(steps);
  return {
    steps,
    packV: column(),
    packA: column(),
    motorA: column(),
    shaftW: column(),
    rpm: column(),
    duty: column(),
    controllerC: column(),
    motorC: column(),
    packC: column(),
    altitudeM: column(),
    speedMS: column(),
    openV: column(),
    leg: new Uint16Array(steps),
    legs,
    sortieOfLeg,
  };
}

/** Throttle, altitude and speed as flown: the duty slews to the leg's, the path is eased between leg ends. */
function flyScript(flight: FineFlight): void {
  let duty = 0;
  let fromSpeed = 0;
  let fromAltitude = 0;
  let legStartS = 0;
  let index = 0;
  for (let step = 0; step < flight.steps; step += 1) {
    const timeS = step * FINE_STEP_S;
    let leg = flight.legs[index]!;
    while (timeS >= legStartS + leg.lengthS && index + 1 < flight.legs.length) {
      legStartS += leg.lengthS;
      fromSpeed = leg.endSpeedMS;
      fromAltitude = leg.endAltitudeM;
      index += 1;
      leg = flight.legs[index]!;
    }
    const share = Math.min(1, (timeS - legStartS) / leg.lengthS);
    const eased = share * share * (3 - 2 * share);
    const reach = leg.slewPerS * FINE_STEP_S;
    duty += Math.max(-reach, Math.min(reach, leg.duty - duty));
    flight.leg[step] = index;
    flight.duty[step] = duty;
    flight.speedMS[step] = fromSpeed + (leg.endSpeedMS - fromSpeed) * share;
    flight.altitudeM[step] = fromAltitude + (leg.endAltitudeM - fromAltitude) * eased;
  }
}

interface State {
  charge: number;
  fastV: number;
  slowV: number;
  shaft: number;
  controllerC: number;
  motorC: number;
  packC: number;
}

/** Motor stopped: only the standby current flows, the propeller runs down. */
function stopped(innerV: number, ohmicOhm: number, standbyA: number, shaft: number): OperatingPoint {
  const runDown = shaft * Math.exp(-FINE_STEP_S / 0.4);
  return {
    shaft: runDown < 1 ? 0 : runDown,
    motorA: 0,
    packA: standbyA,
    packV: innerV - ohmicOhm * standbyA,
    shaftW: 0,
  };
}

/** One-pole step towards `target`, exact for a constant target. */
function approachTo(target: number, from: number, timeConstantS: number): number {
  return target + (from - target) * Math.exp(-FINE_STEP_S / timeConstantS);
}

/** The power system followed through the script. */
export function fly(plan: FlightPlan): FineFlight {
  const { aircraft, day } = plan;
  const { pack, controller, motor } = aircraft;
  const flight = emptyFlight(plan);
  flyScript(flight);
  const density = airDensity(day);
  const factor = plan.pack.resistanceFactor * coldFactor(plan.pack.temperatureC);
  const ohmicOhm = factor * pack.ohmicOhm;
  const totalOhm = factor * (pack.ohmicOhm + pack.fastOhm + pack.slowOhm);
  const state: State = {
    charge: plan.pack.startCharge,
    fastV: 0,
    slowV: 0,
    shaft: 0,
    controllerC: day.ambientC + plan.warmStartK,
    motorC: day.ambientC,
    packC: plan.pack.temperatureC,
  };
  for (let step = 0; step < flight.steps; step += 1) {
    const duty = flight.duty[step]!;
    const openV = pack.cells * restCellVolts(state.charge);
    const innerV = openV - state.fastV - state.slowV;
    const source = { innerV, ohmicOhm, standbyA: controller.standbyA };
    const air = { density, speedMS: flight.speedMS[step]! };
    const point =
      duty > 0.02
        ? solveSpeed(duty, source, aircraft, air, state.shaft)
        : stopped(innerV, ohmicOhm, controller.standbyA, state.shaft);
    flight.openV[step] = openV;
    flight.packV[step] = point.packV;
    flight.packA[step] = point.packA;
    flight.motorA[step] = point.motorA;
    flight.shaftW[step] = point.shaftW;
    flight.rpm[step] = (point.shaft * 60) / (2 * Math.PI);
    flight.controllerC[step] = state.controllerC;
    flight.motorC[step] = state.motorC;
    flight.packC[step] = state.packC;
    const driverA = controller.driver === "motorCurrent" ? point.motorA : point.packA;
    const controllerEndC = day.ambientC + controller.risePerA2 * driverA ** 2;
    state.controllerC = approachTo(controllerEndC, state.controllerC, controller.timeConstantS);
    const motorEndC = day.ambientC + 2.2 * point.motorA ** 2 * motor.windingOhm;
    state.motorC = approachTo(motorEndC, state.motorC, 160);
    state.packC += (point.packA ** 2 * totalOhm * FINE_STEP_S) / pack.heatJPerK;
    state.charge -= (point.packA * FINE_STEP_S) / (3.6 * pack.capacityMah);
    state.fastV = approachTo(factor * pack.fastOhm * point.packA, state.fastV, pack.fastS);
    state.slowV = approachTo(factor * pack.slowOhm * point.packA, state.slowV, pack.slowS);
    state.shaft = point.shaft;
  }
  return flight;
}
