import { rootOf } from "../../base/statistics/index.ts";
import { type LoadRatio, loadRatio, type PropellerShape } from "../../physics/index.ts";

/** A propeller that loads the motor like the fitted one. */
export interface LadderRung {
  readonly diameterIn: number;
  /** To the nearest half inch. */
  readonly pitchIn: number;
  /** Its load over the fitted one's at the same speed. */
  readonly load: LoadRatio;
}

const INCHES_EITHER_WAY = 3;
const PITCH_STEP_IN = 0.5;
/** Pitch over diameter of anything sold. */
const LEAST_PITCH_RATIO = 0.2;
const MOST_PITCH_RATIO = 1.6;

/** Propellers of the fitted one's kind with its load, an inch of diameter apart; those no pitch can match are left out. */
export function equalLoadLadder(fitted: PropellerShape): readonly LadderRung[] {
  const offsets = Array.from({ length: 2 * INCHES_EITHER_WAY + 1 }, (_, i) => i - INCHES_EITHER_WAY);
  return offsets.flatMap((offset) => rungAt(fitted, fitted.diameterIn + offset, offset === 0));
}

function rungAt(fitted: PropellerShape, diameterIn: number, isFitted: boolean): readonly LadderRung[] {
  if (!(diameterIn > 1)) return [];
  const exact = isFitted ? fitted.pitchIn : equalPitchIn(fitted, diameterIn);
  if (exact === null) return [];
  const pitchIn = isFitted ? exact : Math.round(exact / PITCH_STEP_IN) * PITCH_STEP_IN;
  return [{ diameterIn, pitchIn, load: loadRatio(fitted, { ...fitted, diameterIn, pitchIn }) }];
}

function equalPitchIn(fitted: PropellerShape, diameterIn: number): number | null {
  const excess = (pitchIn: number) => Math.log(loadRatio(fitted, { ...fitted, diameterIn, pitchIn }).value);
  return rootOf(excess, LEAST_PITCH_RATIO * diameterIn, MOST_PITCH_RATIO * diameterIn);
}

/** One inch up in diameter and one down in pitch, so many times over. */
export interface InchStep {
  readonly steps: number;
  readonly diameterIn: number;
  readonly pitchIn: number;
  readonly load: LoadRatio;
  /**
   * "holds": the whole interval of the kind keeps the load within 10 %; "fails": it lies wholly beyond;
   * "cannot be told": it straddles, or the shape lies outside what was measured.
   */
  readonly verdict: "holds" | "fails" | "cannot be told";
}

const KEPT_WITHIN = 0.1;

/** The inch rule (common practice, no published source) held against the published measurements of the kind. */
export function oneInchRule(
  fitted: PropellerShape,
  stepCounts: readonly number[] = [1, 4],
): readonly InchStep[] {
  return stepCounts.flatMap((steps) => {
    const diameterIn = fitted.diameterIn + steps;
    const pitchIn = fitted.pitchIn - steps;
    if (!(pitchIn > 0)) return [];
    const load = loadRatio(fitted, { ...fitted, diameterIn, pitchIn });
    return [{ steps, diameterIn, pitchIn, load, verdict: verdictOf(load) }];
  });
}

function verdictOf({ low, high, isExtrapolated }: LoadRatio): InchStep["verdict"] {
  if (isExtrapolated) return "cannot be told";
  if (low >= 1 - KEPT_WITHIN && high <= 1 + KEPT_WITHIN) return "holds";
  return high < 1 - KEPT_WITHIN || low > 1 + KEPT_WITHIN ? "fails" : "cannot be told";
}

/**
 * Pitches, to the half inch, between which one step of the rule holds at the fitted propeller's diameter; null where
 * none does or the published shapes of the kind do not reach.
 */
export function inchRuleRange(
  fitted: PropellerShape,
): { readonly fromIn: number; readonly toIn: number } | null {
  const count = Math.floor((MOST_PITCH_RATIO * fitted.diameterIn) / PITCH_STEP_IN);
  const pitches = Array.from({ length: count }, (_, i) => (i + 1) * PITCH_STEP_IN);
  const held = pitches.filter((pitchIn) => oneInchRule({ ...fitted, pitchIn }, [1])[0]?.verdict === "holds");
  const [fromIn] = held;
  const toIn = held.at(-1);
  return fromIn === undefined || toIn === undefined ? null : { fromIn, toIn };
}
