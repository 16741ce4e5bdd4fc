import { plainNumber } from "../../base/quantity/index.ts";

export const AIRCRAFT_FILE = "aircraft file";
export const COMMON_PRACTICE = "common practice, no published source";
export const USUAL_FULL_CELL = "a full cell of this chemistry, common practice";
export const REST_CURVES = "published rest-voltage curves";

export function measuredIn(flights: number): string {
  return `measured in ${flights} ${flights === 1 ? "flight" : "flights"}`;
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
  return `standard air at ${plainNumber(elevationM)} m and ${plainNumber(ambientC)} degC`;
}

export const NO_CELLS = "the aircraft file gives no pack.cells";
export const NO_CAPACITY = "the aircraft file gives no pack.capacityMah";
export const NO_MASS = "the aircraft file gives no flyingMassKg";
export const NO_PROPELLER_SIZE = "the aircraft file gives no propeller.diameterIn and propeller.pitchIn";
export const MOTOR_NOT_GIVEN = "the aircraft file gives no motor.kv, motor.windingOhm and motor.noLoadA";
export const NO_HEATING =
  "no log shows how the controller heats: add one with --log LOG, with its temperature and the day's --ambient C";
export const NOT_USED = "not used here";
export const CANNOT_TURN = "the motor cannot turn this propeller with this pack";
export const LATE_FULL_THROTTLE = "at full throttle with the charge down to the reserve";
export const TO_THE_RESERVE = "from a full pack down to the reserve";
