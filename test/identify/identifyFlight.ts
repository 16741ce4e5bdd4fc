import { analyseRecording, type Measures } from "../../src/flight/analysis/index.ts";
import type { RandomFlight } from "./randomFlight.ts";
import { absoluteScore, relativeScore, type Score } from "./scoreTable.ts";

/** The measures of the one flight in the log, as a user gets them. */
export function measuresOfFlight({ recording, facts, day }: RandomFlight): Measures {
  const flights = analyseRecording(recording, facts, day);
  if (flights.length !== 1) throw new Error(`${flights.length} flights found in a log of one`);
  return flights[0]!.measures;
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
export function scoresOf(flight: RandomFlight, measures: Measures): Partial<Record<Scored, Score | null>> {
  const { truth, sortie, recording, facts } = flight;
  const hotDayC = sortie.controllerPeakC + facts.field.hotDayC - truth.ambientC;
  const scores: Partial<Record<Scored, Score | null>> = {
    "pack resistance 1 s, %": relativeScore(measures.packResistanceMohm, truth.packResistanceMohm),
    "pack resistance 10 s, %": relativeScore(measures.packResistance10sMohm, truth.packResistance10sMohm),
    "hot-day peak, degC": absoluteScore(measures.controllerHotDayPeakC, hotDayC),
  };
  const isLongEnough = recording.durationS >= LEAST_TIME_CONSTANTS * truth.controllerTimeConstantS;
  if (sortie.controllerPeakC - truth.ambientC >= LEAST_RISE_C && isLongEnough) {
    scores["time constant, %"] = relativeScore(
      measures.controllerTimeConstantS,
      truth.controllerTimeConstantS,
    );
    scores["rise per A2, %"] = relativeScore(measures.controllerRisePerA2, truth.controllerRisePerA2);
  }
  if (recording.channels.has("shaftSpeed") && sortie.motorEfficiencyPct !== null) {
    const { propellerPowerCoefficient, motorEfficiencyPct } = measures;
    scores["power coefficient, %"] = relativeScore(
      propellerPowerCoefficient,
      truth.propellerPowerCoefficient,
    );
    scores["motor efficiency, %"] = relativeScore(motorEfficiencyPct, sortie.motorEfficiencyPct);
  }
  return scores;
}
