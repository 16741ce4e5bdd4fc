import { jsonText } from "./jsonText.ts";
import { type SeasonFlight, simulateSeason } from "./season.ts";
import { PACK_BOX_C, SEASON_AIRCRAFT, SEASON_SEED } from "./seasonPlan.ts";
import { type AircraftFile, STATED_EXACTLY, statedFacts } from "./statedFacts.ts";
import { LOG_STYLES } from "./styles.ts";
import { writeLog } from "./writeLog.ts";

const SUMMER_OFFSET_MINUTES = 120;

/** The pilot's aircraft file: the fitted propeller is the one planned for, the plan is the pilot's own. */
export function ternFile(): AircraftFile {
  const field = { ambientC: 15, elevationM: 120 };
  const facts = statedFacts(SEASON_AIRCRAFT["18x10"], { ...STATED_EXACTLY, currentAccuracyPct: 4 }, field);
  const planned = {
    staticCurrentA: 55,
    staticPowerW: 1700,
    staticRpm: 6900,
    meanCurrentA: 24,
    flightTimeS: 360,
    chargeUsedMah: 2600,
    minCellV: 3.5,
    controllerPeakC: 75,
  };
  const { name, flyingMassKg, pack, controller, motor, propeller, reservePct, sensors } = facts;
  return {
    name,
    flyingMassKg,
    pack: { ...pack, resistanceMohm: 40 },
    controller,
    motor,
    propeller,
    planned,
    reservePct,
    field: facts.field,
    sensors,
  };
}

function notebookLine({ log, notedAmbientC, putBackMah }: SeasonFlight) {
  const { file, flights, date, clock, pack, propeller, note } = log;
  return { file, flights, date, clock, pack, propeller, ambientC: notedAmbientC, putBackMah, note };
}

/** What the pilot noted beside the logs. `putBackMah` is for all flights of a log together. */
function notebook(season: readonly SeasonFlight[]) {
  return {
    about:
      "The invented season of an invented floatplane. Logs and figures come from a simulator with its own equations (scripts/generate-season.ts); no real aircraft, maker or person is behind them.",
    aircraft: "aircraft.json",
    packsKeptAtC: PACK_BOX_C,
    logs: season.map(notebookLine),
  };
}

function truthLine({ log, simulated }: SeasonFlight) {
  const { spec, truth } = simulated;
  const { ampGain, voltGain, ampDelayS, probeLagS, rateHz } = spec.sensors;
  return {
    file: log.file,
    seed: spec.seed,
    style: LOG_STYLES[log.style].name,
    pack: log.pack,
    propeller: log.propeller,
    ambientC: log.ambientC,
    packTemperatureC: spec.pack.temperatureC,
    resistanceFactor: spec.pack.resistanceFactor,
    sensors: { rateHz, ampGain, voltGain, ampDelayS, probeLagS },
    dropOuts: spec.sensors.dropOuts,
    parts: truth.parts,
    flights: truth.sorties.map((sortie, index) => ({ flight: log.flights[index] ?? null, ...sortie })),
  };
}

function truthFile(season: readonly SeasonFlight[]) {
  return {
    about: "What truly happened in each log of the season, by the simulator that wrote it.",
    seed: SEASON_SEED,
    logs: season.map(truthLine),
  };
}

const README = `# Tern: an invented season

A floatplane of our own invention, one bench run and 14 flights in 14 logs, April to July 2026.
Made by \`node scripts/run-typescript.mjs scripts/generate-season.ts\` from one seed: a time-domain simulator with its
own equations (test/generator) writes the logs in several header styles. No real aircraft, maker or person is behind them.

- aircraft.json: what is fitted and what was planned
- season.json: the pilot's notes: date, pack, propeller, air temperature, mAh put back by the charger
- truth.json: what truly happened, for tests; the analysis never reads it
- bench-run.csv: a run on the ground with the 18x8
- flight-NN.csv: flights; 07 and 08 share one log and one charge, 06 has dropouts, 10 stops in flight

What is built in: pack A ages by about 2.5 % resistance a charge, pack B hardly; the 18x10 replaces the 18x8 before
flight 9; the current sensor reads 2.8 % low all season (the put-backs show it); the controller itself does not change.
`;

/** Every file of fixtures/tern by name. */
export function seasonFiles(): ReadonlyMap<string, Uint8Array> {
  const season = simulateSeason();
  const text = (value: string) => new TextEncoder().encode(value);
  const files = new Map<string, Uint8Array>([
    ["README.md", text(README)],
    ["aircraft.json", text(jsonText(ternFile()))],
    ["season.json", text(jsonText(notebook(season)))],
    ["truth.json", text(jsonText(truthFile(season)))],
  ]);
  for (const { log, simulated } of season) {
    const start = { date: log.date, clock: log.clock, offsetMinutes: SUMMER_OFFSET_MINUTES };
    files.set(log.file, writeLog(simulated.logged, LOG_STYLES[log.style], start));
  }
  return files;
}
