import { noLoadCurrentA } from "../../physics/index.ts";
import type { FullThrottlePoint } from "./knownParts.ts";
import { type InputName, type InputValues, isRange, type PlanInputs } from "./planInputs.ts";
import { type Range, scaledRange } from "./range.ts";

/**
 * What was found at a logged full throttle hangs on the stated path resistance and no-load current: had they been
 * other, speed constant and power coefficient would have come out other, and the logged point the same.
 */
export interface Coupling {
  readonly point: FullThrottlePoint;
  readonly isKvMeasured: boolean;
  readonly isCoefficientMeasured: boolean;
}

/** The values with one input moved and what was found with it moved along. */
export function movedTogether(
  values: InputValues,
  name: InputName,
  end: number,
  coupling: Coupling | null,
): InputValues {
  const moved = { ...values, [name]: end };
  if (coupling === null) return moved;
  const ratio = powerRatio(values, moved, coupling.point);
  const kv = coupling.isKvMeasured ? values.kv / backVoltageRatio(values, moved, coupling.point) : moved.kv;
  const powerCoefficient = coupling.isCoefficientMeasured
    ? values.powerCoefficient * ratio
    : moved.powerCoefficient;
  if (name === "pathOhm") return { ...moved, kv, powerCoefficient };
  return name === "noLoadA" ? { ...moved, powerCoefficient } : moved;
}

function backVoltageRatio(
  before: InputValues,
  after: InputValues,
  { packV, motorA }: FullThrottlePoint,
): number {
  return (packV - motorA * after.pathOhm) / (packV - motorA * before.pathOhm);
}

/** Shaft power of the logged point with the moved constants over that with the stated ones. */
function powerRatio(before: InputValues, after: InputValues, point: FullThrottlePoint): number {
  const { packV, motorA } = point;
  const net = ({ noLoadA }: InputValues) => motorA - noLoadCurrentA(noLoadA, packV);
  return backVoltageRatio(before, after, point) * (net(after) / net(before));
}

/** Of a measured coefficient's half-width at least this share is its own. */
const LEAST_OWN_SHARE = 0.4;

/** A measured coefficient without the doubt that comes in through the constants: that one moves with them. */
export function ownDoubt(
  coefficient: Range,
  inputs: PlanInputs,
  values: InputValues,
  coupling: Coupling,
): Range {
  const effects = (["pathOhm", "noLoadA"] as const).map((name) => {
    const input = inputs[name];
    if (!isRange(input)) return 0;
    return Math.abs(powerRatio(values, { ...values, [name]: input.high }, coupling.point) - 1);
  });
  const own = (ratio: number) => {
    const whole = Math.abs(ratio - 1);
    const square = whole ** 2 - effects.reduce((sum, effect) => sum + effect ** 2, 0);
    return Math.max(LEAST_OWN_SHARE * whole, Math.sqrt(Math.max(0, square)));
  };
  const { value, low, high, basis } = coefficient;
  return scaledRange(value, 1 - own(low / value), 1 + own(high / value), basis);
}
