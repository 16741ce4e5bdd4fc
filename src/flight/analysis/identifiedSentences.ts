import type { Notice } from "../../base/notices/index.ts";
import { plainNumber } from "../../base/quantity/index.ts";

export const TOO_FEW_ROWS = "too few rows hold volts and amps";
export const LOAD_HARDLY_CHANGED = "the load hardly changed, so volts and charge cannot be told apart";
export const VOLTS_TOO_LOOSE = "the volts follow the load too loosely in this log";

export function tooShortRun(runningS: number, neededS: number): string {
  return `the motor ran for ${plainNumber(runningS)} s under load; ${plainNumber(neededS)} s are needed`;
}

export function tooFewSteps(steps: number, needed: number): string {
  const times = steps === 0 ? "never changed" : steps === 1 ? "changed once" : `changed ${steps} times`;
  return `the load ${times} by more than a tenth of its peak; ${needed} changes are needed`;
}

export const HEAT_TOO_FEW_ROWS = "too few rows hold amps and the controller's temperature";
export const DEAD_TEMPERATURE =
  "the controller's temperature never changes while current flows: its sensor is dead";
export const HEAT_NOT_BOUNDED = "heating and cooling in this log do not bound the time constant";
export const NO_LIMIT_OR_CURRENT = "needs the controller's limit and a full-throttle current";
export const AIR_AT_LIMIT = "the air is as hot as the controller's limit";

/** `atWorstS`: when the limit is reached at the far end of the interval, s; null when not even there. */
export function limitNotReached(atWorstS: number | null): string {
  const never = "not reached: full throttle does not bring the controller to its limit";
  return atWorstS === null
    ? never
    : `${never}, but at the far end of the interval it does after ${plainNumber(Math.round(atWorstS))} s`;
}

export function riseTooSmall(riseC: number, neededC: number): string {
  return `the controller warmed by ${plainNumber(riseC)} °C only; ${neededC} °C are needed`;
}

export function heatTooShort(spanS: number, timeConstantS: number): string {
  return `the log is ${plainNumber(spanS)} s long, too short for a time constant near ${plainNumber(timeConstantS)} s`;
}

export function fullThrottleFor(ambientC: number): string {
  return `starting at the air's ${plainNumber(ambientC)} °C`;
}

export const NO_MOTOR_CONSTANTS = "needs the motor's kv, windingOhm and noLoadA in the aircraft file";
export const NO_DIAMETER = "needs the propeller's diameterIn in the aircraft file";
export const NO_STEADY_POINT = "volts, amps and shaft speed of a steady full throttle are needed";
export const DUTY_TOO_LOW =
  "the controller was less than a third open: the motor model gives no efficiency there";
export const LINES_DO_NOT_MEET = "with these constants the motor cannot turn the propeller on this pack";
export const NO_FLIGHT_ROWS = "too few rows in the air with the motor pulling";

export function wrongSettingStops(duty: number): string {
  return `speed and kv do not agree at full throttle (${plainNumber(duty)} instead of 1): a setting is wrong`;
}

export interface CauseWords {
  readonly factor: number;
  readonly words: string;
  readonly kind: "speedSetting" | "kv";
}

function causeWords({ kind, factor, words }: CauseWords): string {
  if (kind === "kv") return words;
  return `the speed is logged ${timesTooMuch(factor)} (${words})`;
}

/** What was seen, then the cause or every cause that the data leave. */
export function wrongSettingText(
  duty: number,
  cause: CauseWords | null,
  candidates: readonly CauseWords[],
): string {
  const seen = `Logged speed is ${plainNumber(duty)} of what kv and volts give at full throttle.`;
  if (cause !== null) return `${seen} Cause: ${causeWords(cause)}.`;
  if (candidates.length === 0) return `${seen} No usual mistake explains it.`;
  return `${seen} Possible causes: ${candidates.map(causeWords).join("; or ")}.`;
}

/**
 * Why speeds of this log are not judged, or null where only kv is in question: the sensor is right then.
 * "the speed is logged 2 times too high", or every factor that the data leave.
 */
export function speedDoubt(cause: CauseWords | null, candidates: readonly CauseWords[]): string | null {
  const left = cause === null ? candidates : [cause];
  if (left.length === 0) return "speed, kv and volts do not agree at full throttle";
  const factors = left
    .filter(({ kind }) => kind === "speedSetting")
    .map(({ factor }) => timesTooMuch(factor));
  if (factors.length === 0) return null;
  const certain = cause === null ? "may be" : "is";
  const right = factors.length < left.length ? ", or right with a wrong kv" : "";
  return `the logged speed ${certain} ${[...new Set(factors)].join(" or ")}${right}`;
}

function timesTooMuch(factor: number): string {
  return factor > 1 ? `${plainNumber(factor)} times too high` : `${plainNumber(1 / factor)} times too low`;
}

export function wrongSettingNotice(
  wrong: { readonly text: string; readonly cause: CauseWords | null },
  line: number,
): Notice {
  return {
    code: wrong.cause === null ? "setting-doubtful" : "setting-wrong",
    severity: "warning",
    text: `Line ${line}: ${wrong.text} Static and peak speed are shown as logged. Correct kv, or set sensors.rpmDivisor in the aircraft file.`,
    lines: [line],
  };
}

export function kvOffered(kv: number, statedKv: number, line: number): Notice {
  return {
    code: "kv-offered",
    severity: "note",
    text: `Full throttle at line ${line} fits a kv of ${plainNumber(kv)} better than ${plainNumber(statedKv)}. Set motor.kv in the aircraft file to use it.`,
    lines: [line],
  };
}

/** The propeller of the aircraft file cannot well take the power that speed, volts and amps show. */
export function coefficientUnlike(
  measured: number,
  { low, high, group }: { readonly low: number; readonly high: number; readonly group: string },
  line: number,
): Notice {
  const range = `${low.toPrecision(2)} to ${high.toPrecision(2)}`;
  const kind = group === "all kinds" ? "propellers of all kinds" : `${group} propellers`;
  return {
    code: "coefficient-unlike",
    severity: "warning",
    text:
      `Full throttle at line ${line} gives a power coefficient of ${measured.toPrecision(3)}, outside ${range}, published for ${kind}. ` +
      "Check the propeller's size in the aircraft file, the current sensor and the logged speed.",
    lines: [line],
  };
}
