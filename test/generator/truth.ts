import type { TrueHeatDriver } from "./aircraft.ts";
import { FINE_STEP_S, type FineFlight, type FlightPlan } from "./fly.ts";
import { coldFactor, stepResistance } from "./powertrain.ts";

/** One flight (or bench run) as it truly was. Seconds since the log starts. */
export interface SortieTruth {
  readonly kind: "flight" | "benchRun";
  /** Motor running. */
  readonly startS: number;
  readonly endS: number;
  /** False when the log starts or ends under power. */
  readonly complete: boolean;
  /** The throttle begins to move to take-off power; null for a bench run or before the log starts. */
  readonly takeOffS: number | null;
  /** The wheels or floats touch for the last time; null for a bench run or after the log ends. */
  readonly touchdownS: number | null;
  readonly flightTimeS: number | null;
  readonly motorRunTimeS: number;
  /** Over the sortie's window: from the log's start, or half way through the pause before, likewise after. */
  readonly chargeUsedMah: number;
  readonly energyUsedWh: number;
  readonly flightChargeMah: number | null;
  readonly peakCurrentA: number;
  readonly peakPowerW: number;
  readonly peakRpm: number;
  readonly restCellV: number;
  readonly minCellV: number;
  readonly sagPerCellV: number;
  /** Mean of the last 1.5 s of the last full-throttle plateau of the run-up; null without one. */
  readonly staticCurrentA: number | null;
  readonly staticPowerW: number | null;
  readonly staticRpm: number | null;
  /** Shaft power over electrical power less standby, on that plateau. */
  readonly motorEfficiencyPct: number | null;
  /** Of the controller itself, not of a probe that lags behind it. */
  readonly controllerPeakC: number;
  readonly motorPeakC: number;
  readonly packPeakC: number;
  readonly chargeLeftPct: number;
}

/** What the parts of the aircraft truly are, as far as a log may tell. */
export interface PartsTruth {
  /** Drop per ampere 1 s and 10 s after a step, mohm. */
  readonly packResistanceMohm: number;
  readonly packResistance10sMohm: number;
  readonly controllerTimeConstantS: number;
  readonly controllerRisePerA2: number;
  readonly driver: TrueHeatDriver;
  readonly propellerPowerCoefficient: number;
  readonly kv: number;
  readonly windingOhm: number;
  readonly noLoadA: number;
  readonly ambientC: number;
}

export interface FlightTruth {
  readonly parts: PartsTruth;
  readonly sorties: readonly SortieTruth[];
}

interface Span {
  readonly from: number;
  /** Last step, included. */
  readonly to: number;
}

function sumOver(span: Span, value: (step: number) => number): number {
  let sum = 0;
  for (let step = span.from; step < span.to; step += 1) {
    sum += ((value(step) + value(step + 1)) / 2) * FINE_STEP_S;
  }
  return sum;
}

function most(span: Span, value: (step: number) => number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let step = span.from; step <= span.to; step += 1) best = Math.max(best, value(step));
  return best;
}

function meanOver(span: Span, value: (step: number) => number): number {
  let sum = 0;
  for (let step = span.from; step <= span.to; step += 1) sum += value(step);
  return sum / (span.to - span.from + 1);
}

function firstStep(span: Span, holds: (step: number) => boolean): number | null {
  for (let step = span.from; step <= span.to; step += 1) if (holds(step)) return step;
  return null;
}

function lastStep(span: Span, holds: (step: number) => boolean): number | null {
  for (let step = span.to; step >= span.from; step -= 1) if (holds(step)) return step;
  return null;
}

const isRunning = (flight: FineFlight) => (step: number) => flight.duty[step]! > 0.02;
const legKind = (flight: FineFlight, step: number) => flight.legs[flight.leg[step]!]!.kind;

/** The last 1.5 s of the last full-throttle plateau of the run-up. */
function plateau(flight: FineFlight, span: Span): Span | null {
  const end = lastStep(span, (step) => legKind(flight, step) === "runUp" && flight.duty[step]! > 0.999);
  return end === null ? null : { from: end - Math.round(1.5 / FINE_STEP_S), to: end };
}

function touchdownStep(flight: FineFlight, span: Span): number | null {
  const end = lastStep(span, (step) => legKind(flight, step) === "flare");
  return end === null || end >= span.to ? null : end;
}

function sortieTruth(flight: FineFlight, plan: FlightPlan, span: Span): SortieTruth {
  const { pack, controller } = plan.aircraft;
  const running = isRunning(flight);
  const start = firstStep(span, running) ?? span.from;
  const end = lastStep(span, running) ?? span.to;
  const motorOn = { from: start, to: end };
  const seconds = (step: number) => step * FINE_STEP_S;
  const packW = (step: number) => flight.packV[step]! * flight.packA[step]!;
  const isBench = firstStep(span, (step) => legKind(flight, step) === "takeOff") === null;
  const takeOff = firstStep(span, (step) => legKind(flight, step) === "takeOff");
  const touchdown = touchdownStep(flight, span);
  const isWhole = takeOff !== null && takeOff > span.from && touchdown !== null;
  const inAir = isWhole ? { from: takeOff, to: touchdown } : null;
  const full = plateau(flight, span);
  const usedMah = sumOver(span, (step) => flight.packA[step]!) / 3.6;
  const before = { from: Math.max(span.from, start - Math.round(5 / FINE_STEP_S)), to: start };
  return {
    kind: isBench ? "benchRun" : "flight",
    startS: seconds(start),
    endS: seconds(end),
    complete: !running(span.from) && !running(span.to),
    takeOffS: takeOff === null || takeOff === span.from ? null : seconds(takeOff),
    touchdownS: touchdown === null ? null : seconds(touchdown),
    flightTimeS: inAir === null ? null : seconds(inAir.to - inAir.from),
    motorRunTimeS: sumOver(motorOn, (step) => (running(step) ? 1 : 0)),
    chargeUsedMah: usedMah,
    energyUsedWh: sumOver(span, packW) / 3600,
    flightChargeMah: inAir === null ? null : sumOver(inAir, (step) => flight.packA[step]!) / 3.6,
    peakCurrentA: most(span, (step) => flight.packA[step]!),
    peakPowerW: most(span, packW),
    peakRpm: most(span, (step) => flight.rpm[step]!),
    restCellV: meanOver(before, (step) => flight.packV[step]!) / pack.cells,
    minCellV: -most(motorOn, (step) => -flight.packV[step]!) / pack.cells,
    sagPerCellV: most(motorOn, (step) => flight.openV[step]! - flight.packV[step]!) / pack.cells,
    staticCurrentA: full === null ? null : meanOver(full, (step) => flight.packA[step]!),
    staticPowerW: full === null ? null : meanOver(full, packW),
    staticRpm: full === null ? null : meanOver(full, (step) => flight.rpm[step]!),
    motorEfficiencyPct:
      full === null
        ? null
        : (100 * meanOver(full, (step) => flight.shaftW[step]!)) /
          meanOver(full, (step) => flight.packV[step]! * (flight.packA[step]! - controller.standbyA)),
    controllerPeakC: most(span, (step) => flight.controllerC[step]!),
    motorPeakC: most(span, (step) => flight.motorC[step]!),
    packPeakC: most(span, (step) => flight.packC[step]!),
    chargeLeftPct: 100 * (plan.pack.startCharge - totalMah(flight, span.to) / pack.capacityMah),
  };
}

function totalMah(flight: FineFlight, to: number): number {
  return sumOver({ from: 0, to }, (step) => flight.packA[step]!) / 3.6;
}

/** Steps of the log that belong to each sortie: borders lie half way through the pause between them. */
function sortieSpans(flight: FineFlight, whole: Span): Span[] {
  const running = isRunning(flight);
  const sortieAt = (step: number) => flight.sortieOfLeg[flight.leg[step]!]!;
  const spans: Span[] = [];
  let from = whole.from;
  for (let sortie = sortieAt(whole.from); sortie < sortieAt(whole.to); sortie += 1) {
    const off = lastStep(whole, (step) => sortieAt(step) === sortie && running(step)) ?? from;
    const on = firstStep(whole, (step) => sortieAt(step) === sortie + 1 && running(step)) ?? whole.to;
    const border = Math.round((off + on) / 2);
    spans.push({ from, to: border });
    from = border;
  }
  spans.push({ from, to: whole.to });
  return spans;
}

/** Truth of a log that covers `fromS`..`toS` of the fine flight; times count from `fromS`. */
export function flightTruth(flight: FineFlight, plan: FlightPlan, fromS: number, toS: number): FlightTruth {
  const lastFine = flight.steps - 1;
  const whole = {
    from: Math.max(0, Math.round(fromS / FINE_STEP_S)),
    to: Math.min(lastFine, Math.round(toS / FINE_STEP_S)),
  };
  const sorties = sortieSpans(flight, whole).map((span) => sortieTruth(flight, plan, span));
  const shifted = sorties.map((sortie) => ({
    ...sortie,
    startS: sortie.startS - fromS,
    endS: sortie.endS - fromS,
    takeOffS: sortie.takeOffS === null ? null : sortie.takeOffS - fromS,
    touchdownS: sortie.touchdownS === null ? null : sortie.touchdownS - fromS,
  }));
  return { parts: partsTruth(plan), sorties: shifted };
}

function partsTruth(plan: FlightPlan): PartsTruth {
  const { pack, controller, propeller, motor } = plan.aircraft;
  const factor = plan.pack.resistanceFactor * coldFactor(plan.pack.temperatureC);
  return {
    packResistanceMohm: 1000 * stepResistance(pack, factor, 1),
    packResistance10sMohm: 1000 * stepResistance(pack, factor, 10),
    controllerTimeConstantS: controller.timeConstantS,
    controllerRisePerA2: controller.risePerA2,
    driver: controller.driver,
    propellerPowerCoefficient: propeller.staticCp,
    kv: motor.kv,
    windingOhm: motor.windingOhm,
    noLoadA: motor.noLoadA,
    ambientC: plan.day.ambientC,
  };
}
