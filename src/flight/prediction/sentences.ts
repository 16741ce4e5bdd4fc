import { plainNumber } from "../../base/quantity/index.ts";

export const AIRCRAFT_FILE = "aircraft file";
export const COMMON_PRACTICE = "common practice, no published source";
export const USUAL_FULL_CELL = "a full cell of this chemistry, common practice";
export const REST_CURVES = "published rest-voltage curves";

export function measuredIn(flights: number): string {
  return `measured in ${flights} ${flights === 1 ? "flight" : "flights"}`;
}

export function measuredOnPacks(flights: number, packs: number): string {
  return `${measuredIn(flights)} on ${packs} packs`;
}

export function publishedForKind(kind: string): string {
  return `published static measurements (UIUC), ${kind}`;
}

export function combinedWithMeasured(kind: string, flights: number): string {
  return `published static measurements (UIUC), ${kind}, with another propeller ${measuredIn(flights)}`;
}

export function scaledFrom(basis: string): string {
  return `carried over from what was ${basis}`;
}

export function perCellAndCapacity(): string {
  return `usual for the cells and capacity, ${COMMON_PRACTICE}`;
}

export function airOf(ambientC: number, elevationM: number): string {
  return `standard air at ${plainNumber(elevationM)} m and ${plainNumber(ambientC)} °C`;
}

export const NO_CELLS = "the aircraft file gives no pack.cells";
export const NO_CAPACITY = "the aircraft file gives no pack.capacityMah";
export const NO_MASS = "the aircraft file gives no flyingMassKg";
export const NO_PROPELLER_SIZE = "the aircraft file gives no propeller.diameterIn and propeller.pitchIn";
export const MOTOR_NOT_GIVEN = "the aircraft file gives no motor.kv, motor.windingOhm and motor.noLoadA";
export const NO_HEATING = "no log that was given shows how the controller heats";
export const NOT_CARRIED_OVER =
  "the logged heating cannot be carried over: that needs the motor's, the pack's and the propeller's facts";
export const NOT_USED = "not used here";
export const CANNOT_TURN = "the motor cannot turn this propeller with this pack";
export const LATE_FULL_THROTTLE = "at full throttle with the charge down to the reserve";
export const TO_THE_RESERVE = "from a full pack down to the reserve";
export const THRUST_ESTIMATED = "an estimate from published thrust coefficients of the kind";

export function reachesNought(part: string, basis: string): string {
  return `the interval of ${part} (${basis}) reaches nought: its flights disagree, so look for the one whose log is wrong`;
}
export function endOutOfReach(): string {
  return "the motor cannot turn this propeller with this pack at every end of the intervals; state more of the parts";
}

interface Size {
  readonly diameterIn: number;
  readonly pitchIn: number;
}

export function sizeText({ diameterIn, pitchIn }: Size): string {
  return `${numberText(diameterIn)}x${numberText(pitchIn)}`;
}

function numberText(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** Name of a run by its log; its number where the log holds several. @param index from 0 */
export function runInLog(log: string, index: number, runs: number): string {
  return runs === 1 ? log : `${log} (${index + 1})`;
}

export function otherPropeller(asked: Size, logged: Size): string {
  const diameter = percentText(asked.diameterIn / logged.diameterIn);
  const pitch = percentText(asked.pitchIn / logged.pitchIn);
  return `${sizeText(asked)} was not logged: its diameter is ${diameter} and its pitch ${pitch} of the logged ${sizeText(logged)}`;
}

export function otherPack(logged: number, unit: "cells" | "mAh"): string {
  return `the logs are of ${plainNumber(logged)} ${unit}: resistance is carried over per cell and capacity`;
}

export function beyondLoggedCurrent(predictedA: number, loggedA: number): string {
  const times = (predictedA / loggedA).toFixed(2);
  return `the static current is ${times} times the highest one logged, ${plainNumber(loggedA)} A`;
}

function percentText(ratio: number): string {
  return `${Math.round(100 * ratio)} %`;
}

export function unlikePublished(measured: number, low: number, high: number, kind: string): string {
  const range = `${low.toPrecision(2)} to ${high.toPrecision(2)}`;
  return `the measured power coefficient ${measured.toPrecision(3)} lies outside ${range}, published for ${kind}: check size, family and sensors`;
}
