import type { Phase, PhaseName } from "./analysedFlight.ts";
import type { PowerStretch } from "./flightPower.ts";
import type { FlightShape } from "./flightShape.ts";
import type { RunGroup } from "./runGroups.ts";

/** Longest time that counts as take-off after the advance of power. */
const LONGEST_TAKE_OFF_S = 20;
/** Take-off is over when the load has come back to this share of its highest. */
const CLIMB_SHARE = 0.8;

/** The phases of one window, end to end without overlap; a phase without length is left out. */
export function phasesOf(
  windowStartS: number,
  windowEndS: number,
  group: RunGroup | null,
  shape: FlightShape | null,
): readonly Phase[] {
  if (group === null) return contiguous(windowStartS, windowEndS, []);
  const marks: [PhaseName, number][] = [];
  if (shape === null) marks.push(["runUp", group.startS], ["after", group.endS]);
  else marks.push(...flightMarks(group, shape));
  return contiguous(windowStartS, windowEndS, marks);
}

function flightMarks(group: RunGroup, shape: FlightShape): readonly [PhaseName, number][] {
  const takeOffS = shape.takeOff.value;
  const touchdownS = shape.isTouchdownLogged ? shape.touchdown.value : group.endS;
  const marks: [PhaseName, number][] = [];
  if (shape.isTakeOffLogged) {
    marks.push(["taxi", Math.min(group.startS, takeOffS)]);
    for (const burst of runUps(shape, takeOffS)) marks.push(["runUp", burst.startS], ["taxi", burst.endS]);
    marks.push(["takeOff", takeOffS]);
  }
  marks.push(["flight", shape.isTakeOffLogged ? takeOffEnd(shape, touchdownS) : group.startS]);
  marks.push(["landing", Math.min(shape.flightPowerEndS, touchdownS)], ["taxi", touchdownS]);
  marks.push(["after", Math.max(group.endS, touchdownS)]);
  return marks;
}

function runUps(shape: FlightShape, takeOffS: number): readonly PowerStretch[] {
  return shape.stretches.filter((one) => one.endS < takeOffS);
}

/** Where the load first falls below its take-off level, at the latest after 20 s. */
export function takeOffEnd(shape: FlightShape, latestS: number): number {
  const { trace, takeOff } = shape;
  const endS = Math.min(latestS, takeOff.value + LONGEST_TAKE_OFF_S);
  let highest = 0;
  for (let i = 0; i < trace.load.length; i++) {
    const atS = trace.timeS[i]!;
    if (atS < takeOff.value) continue;
    if (atS >= endS) break;
    highest = Math.max(highest, trace.load[i]!);
    if (highest > shape.level && trace.load[i]! < CLIMB_SHARE * highest && trace.load[i]! > 0) {
      if (isFalling(shape, i)) return atS;
    }
  }
  return endS;
}

function isFalling({ trace }: FlightShape, index: number): boolean {
  return index > 0 && trace.load[index]! <= trace.load[index - 1]!;
}

/** Phases between marks, each beginning where the one before ends; marks out of order are moved up. */
function contiguous(
  startS: number,
  endS: number,
  marks: readonly (readonly [PhaseName, number])[],
): readonly Phase[] {
  const phases: Phase[] = [];
  let phase: PhaseName = "rest";
  let fromS = startS;
  for (const [next, atS] of [...marks, ["after", endS] as const]) {
    const toS = Math.min(endS, Math.max(fromS, atS));
    const last = phases.at(-1);
    if (toS > fromS) {
      if (last?.phase === phase) phases[phases.length - 1] = { phase, startS: last.startS, endS: toS };
      else phases.push({ phase, startS: fromS, endS: toS });
    }
    fromS = toS;
    phase = next;
  }
  return phases;
}
