import { revPerSecond } from "../../base/quantity/index.ts";
import { median, quantile } from "../../base/statistics/index.ts";
import { backVoltageV } from "../../physics/index.ts";
import { workingChannel } from "./channelOrWhy.ts";
import type { FlightContext } from "./flightContext.ts";
import { motorConstants } from "./motorLoadConstants.ts";

/** A controller at full throttle passes the pack's volts on: more or less than this is a wrong setting. */
const FULL_DUTY = [0.88, 1.12] as const;
/** Without a full throttle held on the ground, the highest duty of a whole flight lies in here. */
const HIGHEST_DUTY = [0.75, 1.12] as const;
/** Single rows of a dive, in which the air drives the propeller, are beyond this quantile. */
const NEARLY_ALL = 0.99;

/**
 * Whether the logged speed can belong to this motor at these volts with the estimated current (one entry a row of
 * the window): (w / kv + Im R) / V is the duty of the controller. Current grows with the cube of speed, so a
 * wrong blade or pole setting would show here first.
 */
export function isSpeedBelievable(context: FlightContext, currentA: Float64Array): boolean {
  const { recording, facts, rows, staticRun } = context;
  const { motor } = motorConstants(facts);
  const packV = workingChannel(recording, "packVoltage");
  const speed = workingChannel(recording, "shaftSpeed");
  if (motor === null || packV === null || speed === null) return false;
  const dutyAt = (row: number) => {
    const back = backVoltageV(revPerSecond(speed[row]!), motor.kvRpmPerV);
    // Power in: V I = Im (Im R + back), of one motor.
    const inW = (packV[row]! * currentA[row - rows.firstRow]!) / facts.motor.count;
    const motorA = (2 * inW) / (back + Math.sqrt(back * back + 4 * motor.pathOhm * inW));
    return (back + motorA * motor.pathOhm) / packV[row]!;
  };
  const dutiesOf = (first: number, last: number) =>
    Array.from({ length: last - first + 1 }, (_, k) => dutyAt(first + k)).filter((duty) => duty > 0);
  if (staticRun.firstRow !== null) {
    const duties = dutiesOf(staticRun.firstRow, staticRun.lastRow);
    return duties.length > 0 && isWithin(median(duties), FULL_DUTY);
  }
  const duties = dutiesOf(rows.firstRow, rows.lastRow);
  return duties.length > 0 && isWithin(quantile(duties, NEARLY_ALL), HIGHEST_DUTY);
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}
