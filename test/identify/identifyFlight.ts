import { type ControllerHeat, identifyControllerHeat } from "../../src/flight/analysis/controllerHeat.ts";
import { identifyMotorLoad, type MotorLoad } from "../../src/flight/analysis/motorLoad.ts";
import { identifyPackResistance, type PackResistance } from "../../src/flight/analysis/packResistance.ts";
import { smallestStep } from "../../src/log/recording/index.ts";
import type { RandomFlight } from "./randomFlight.ts";
import { absoluteScore, relativeScore, type Score } from "./scoreTable.ts";

export interface IdentifiedFlight {
  readonly pack: PackResistance;
  readonly heat: ControllerHeat;
  readonly load: MotorLoad;
}

/** The pilot states the day's air to 2 degC, one standard deviation. */
const AMBIENT_SD_C = 2;

/** Everything that one log tells of the parts. */
export function identifyFlight({ recording, facts, day, plateau, sortie }: RandomFlight): IdentifiedFlight {
  const all = { firstRow: 0, lastRow: recording.rows - 1 };
  const rowAt = (atS: number) => Math.min(all.lastRow, Math.round(atS / recording.stepS));
  const inAir =
    sortie.takeOffS === null || sortie.touchdownS === null
      ? null
      : { firstRow: rowAt(sortie.takeOffS), lastRow: rowAt(sortie.touchdownS) };
  const air = { ambientC: day.ambientC!, standardDeviationC: AMBIENT_SD_C };
  const pack = identifyPackResistance(recording, all, facts);
  const load = identifyMotorLoad(recording, all, facts, day, plateau, inAir, pack.timing);
  return { pack, heat: identifyControllerHeat(recording, all, facts, air, load, pack.timing), load };
}

export const SCORED = [
  "pack resistance 1 s, %",
  "pack resistance 10 s, %",
  "time constant, %",
  "rise per A2, %",
  "hot-day peak, degC",
  "power coefficient, %",
  "motor efficiency, %",
] as const;
export type Scored = (typeof SCORED)[number];

/** Least warming and least length in time constants that the heat estimates ask for. */
const LEAST_RISE_C = 8;
const LEAST_TIME_CONSTANTS = 0.7;

/** Scores of one flight; a quantity whose stated preconditions the flight does not meet is left out. */
export function scoresOf(
  flight: RandomFlight,
  identified: IdentifiedFlight,
): Partial<Record<Scored, Score | null>> {
  const { truth, sortie, recording } = flight;
  const { pack, heat, load } = identified;
  const scores: Partial<Record<Scored, Score | null>> = {
    "pack resistance 1 s, %": relativeScore(pack.after1S, truth.packResistanceMohm),
    "pack resistance 10 s, %": relativeScore(pack.after10S, truth.packResistance10sMohm),
  };
  const risesEnough = sortie.controllerPeakC - truth.ambientC >= LEAST_RISE_C + 1;
  if (risesEnough && recording.durationS >= LEAST_TIME_CONSTANTS * truth.controllerTimeConstantS) {
    scores["time constant, %"] = relativeScore(heat.timeConstantS, truth.controllerTimeConstantS);
    scores["rise per A2, %"] = relativeScore(heat.risePerA2, truth.controllerRisePerA2);
  }
  scores["hot-day peak, degC"] = hotDayScore(flight, heat);
  if (recording.channels.has("shaftSpeed") && flight.plateau !== null) {
    scores["power coefficient, %"] = relativeScore(
      load.propellerPowerCoefficient,
      truth.propellerPowerCoefficient,
    );
    scores["motor efficiency, %"] = relativeScore(load.motorEfficiencyPct, sortie.motorEfficiencyPct!);
  }
  return scores;
}

/** Peak as logged, lag put on top, moved to the hot day. */
function hotDayScore({ recording, facts, day, truth, sortie }: RandomFlight, heat: ControllerHeat) {
  const logged = recording.channels.get("controllerTemperature")!;
  const peakC = logged.reduce((most, value) => Math.max(most, value));
  const lag = heat.peakLag ?? { valueC: 0, halfWidthC: 0 };
  const hotC = facts.field.hotDayC;
  const value = peakC + lag.valueC + hotC - day.ambientC!;
  const probeC = facts.sensors.temperatureAccuracyC / 2;
  const stepC = smallestStep(logged) / Math.sqrt(12);
  const half = Math.hypot(2 * Math.hypot(AMBIENT_SD_C, probeC, stepC), lag.halfWidthC);
  const trueC = sortie.controllerPeakC + hotC - truth.ambientC;
  return absoluteScore({ value, low: value - half, high: value + half }, trueC);
}
