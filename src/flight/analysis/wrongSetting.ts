import type { Facts } from "../../aircraft/facts.ts";
import { type MotorConstants, motorState, predictStaticPowerCoefficient } from "../../physics/index.ts";
import { wrongSettingText } from "./identifiedSentences.ts";
import type { DayAir } from "./motorLoadConstants.ts";
import type { LoadPoint } from "./motorLoadPoint.ts";
import { coefficientAt } from "./propellerLoad.ts";
import { otherPolePairs, type SpeedFactor, speedFactors } from "./wrongSettingFactors.ts";

/** One explanation of a duty that cannot be. */
export interface Cause {
  readonly kind: "speedSetting" | "kv";
  /** Logged over true shaft speed, or stated over true kv. */
  readonly factor: number;
  /** What would produce it, in words. */
  readonly words: string;
}

export interface WrongSetting {
  /** Duty that the settings give at this point; 1 is possible at most. */
  readonly duty: number;
  /** The one cause the data leave, or null: then `candidates` holds every one they do not exclude. */
  readonly cause: Cause | null;
  readonly candidates: readonly Cause[];
  readonly text: string;
}

export interface Suspect {
  readonly point: LoadPoint;
  /** The throttle is logged and full at the point. */
  readonly isFull: boolean;
  readonly motor: MotorConstants;
  readonly facts: Facts;
  readonly air: DayAir;
}

/** A full-throttle duty this far from 1 cannot be explained by the spread of good constants. */
const DUTY_LIMIT = 0.12;
/** Spread of the duty at full throttle with right settings (kv 2.5 %, resistance 15 %, gains), 1 sd. */
const DUTY_SD = 0.035;
/**
 * Relative spread between a propeller and the mean of its kind that is allowed beyond what was measured of that
 * kind: worn, trimmed or mislabelled blades. Our choice, on the side of naming too little.
 */
const PROPELLER_DOUBT = 0.15;
/** A propeller within 1.96 sd of its kind supports a cause; one beyond 3.3 excludes it. */
const SUPPORT_SD = 1.96;
const EXCLUSION_SD = 3.3;
const DUTY_EXCLUSION_SD = 4;
/** Both together, as a sum of squares. */
const JOINT_EXCLUSION = 20;
/** Pole pairs that are not the stated ones count only if they fit nearly as well (sum of squares). */
const RIVAL_MARGIN = 9;
/** A kv further off than this is no mistake of winding or label. */
const KV_RANGE = [0.6, 1.7] as const;

/**
 * Tells a speed sensor set for the wrong blades or poles from a wrong kv. Both move the duty at full throttle; the
 * power coefficient goes as the cube of a speed factor and hardly at all with kv. One cause is named only if
 * every other lies beyond what its kind of propeller and a full throttle allow; else all that remain are listed.
 */
export function findWrongSetting(suspect: Suspect): WrongSetting | null {
  const { duty } = stateAt(suspect, 1);
  if (!isSuspicious(suspect, duty)) return null;
  const { facts } = suspect;
  const usual = remaining([kvCause(suspect), ...speedCauses(suspect, speedFactors(facts))]);
  const others = facts.motor.polePairs === null ? [] : remaining(speedCauses(suspect, otherPolePairs(facts)));
  const best = usual[0];
  const rivals = best ? others.filter((one) => one.misfit < best.misfit + RIVAL_MARGIN) : others;
  const left = [...usual, ...rivals].toSorted((a, b) => a.misfit - b.misfit);
  const single = best?.isSupported && left.length === 1 ? best.cause : null;
  const candidates = left.map((one) => one.cause);
  return { duty, cause: single, candidates, text: wrongSettingText(duty, single, candidates) };
}

/** The causes that the data do not exclude, the likeliest first. */
function remaining(tried: readonly (Tried | null)[]): Tried[] {
  return tried
    .filter((one) => one !== null && !one.isExcluded)
    .toSorted((a, b) => a!.misfit - b!.misfit) as Tried[];
}

function isSuspicious(suspect: Suspect, duty: number): boolean {
  if (duty > 1 + DUTY_LIMIT) return true;
  if (duty >= 1 - DUTY_LIMIT) return false;
  return suspect.isFull || Math.abs(propellerSd(suspect, 1)) > EXCLUSION_SD;
}

interface Tried {
  readonly cause: Cause;
  readonly misfit: number;
  readonly isSupported: boolean;
  readonly isExcluded: boolean;
}

function speedCauses(suspect: Suspect, factors: readonly SpeedFactor[]): Tried[] {
  return factors.map(({ factor, words }) => {
    const { duty } = stateAt(suspect, factor);
    // Part throttle explains a low duty where the throttle is not logged.
    const ofDuty = suspect.isFull || duty > 1 ? Math.log(duty) / DUTY_SD : 0;
    return judged({ kind: "speedSetting", factor, words }, ofDuty, propellerSd(suspect, factor));
  });
}

/** kv that makes the duty 1, if it is one that could be stated by mistake. */
function kvCause(suspect: Suspect): Tried | null {
  const { point, motor } = suspect;
  const needed = (60 * point.speedRevPerS) / (point.packV - point.packA * motor.pathOhm);
  const factor = motor.kvRpmPerV / needed;
  if (!(factor >= KV_RANGE[0] && factor <= KV_RANGE[1])) return null;
  const right = { ...suspect, motor: { ...motor, kvRpmPerV: needed } };
  const words = `kv near ${Math.round(needed)} instead of ${Math.round(motor.kvRpmPerV)} rev/min per volt`;
  return judged({ kind: "kv", factor, words }, 0, propellerSd(right, 1));
}

function judged(cause: Cause, ofDuty: number, ofPropeller: number): Tried {
  const misfit = ofDuty ** 2 + ofPropeller ** 2;
  return {
    cause,
    misfit,
    isSupported: Math.abs(ofDuty) * DUTY_SD <= DUTY_LIMIT && Math.abs(ofPropeller) <= SUPPORT_SD,
    isExcluded:
      !(misfit <= JOINT_EXCLUSION) ||
      Math.abs(ofDuty) > DUTY_EXCLUSION_SD ||
      Math.abs(ofPropeller) > EXCLUSION_SD,
  };
}

function pointAt({ point }: Suspect, factor: number): LoadPoint {
  return { ...point, speedRevPerS: point.speedRevPerS / factor };
}

function stateAt(suspect: Suspect, factor: number) {
  const { packV, packA, speedRevPerS } = pointAt(suspect, factor);
  return motorState(packV, packA, speedRevPerS, suspect.motor);
}

/** How many standard deviations the power coefficient lies from its kind's; 0 where the propeller is not known. */
function propellerSd(suspect: Suspect, factor: number): number {
  const { diameterIn, pitchIn, blades, family } = suspect.facts.propeller;
  if (diameterIn === null || pitchIn === null) return 0;
  const expected = predictStaticPowerCoefficient({ diameterIn, pitchIn, blades, family });
  const found = coefficientAt(pointAt(suspect, factor), suspect.motor, suspect.facts, suspect.air);
  if (!(found > 0)) return Number.POSITIVE_INFINITY;
  return Math.log(found / expected.value) / Math.hypot(expected.relativeSd, PROPELLER_DOUBT);
}
