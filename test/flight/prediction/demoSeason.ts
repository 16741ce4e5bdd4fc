import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { parseAircraftFile, type ReadAircraft } from "../../../src/aircraft/index.ts";
import { type CheckedLogWithRows, checkLog } from "../../../src/flight/check/index.ts";
import type { LoggedFlight } from "../../../src/flight/prediction/index.ts";

const FOLDER = resolve(import.meta.dirname, "../../../fixtures/tern");
const text = (file: string) => readFileSync(resolve(FOLDER, file), "utf8");

/** What a log of the season truly was, as the simulator wrote it. */
export interface TrueLog {
  readonly file: string;
  readonly propeller: "18x8" | "18x10";
  readonly pack: "A" | "B";
  readonly ambientC: number;
  readonly sensors: { readonly ampGain: number };
  readonly flights: readonly {
    readonly kind: string;
    readonly staticCurrentA: number | null;
    readonly staticPowerW: number | null;
    readonly staticRpm: number | null;
    readonly restCellV: number;
    readonly sagPerCellV: number;
    readonly flightTimeS: number | null;
    readonly flightChargeMah: number | null;
    readonly controllerPeakC: number;
    readonly complete: boolean;
  }[];
}

export const TRUE_LOGS = (JSON.parse(text("truth.json")) as { logs: readonly TrueLog[] }).logs;
const NOTES = (JSON.parse(text("season.json")) as { logs: readonly { file: string; ambientC: number }[] })
  .logs;

/** The demo's aircraft file with the propeller of a part of the season. */
export function ternWith(propeller: "18x8" | "18x10"): ReadAircraft {
  const read = parseAircraftFile(text("aircraft.json"), "aircraft.json");
  if (read.state !== "read") throw new Error("the demo's aircraft file was refused");
  const pitchIn = propeller === "18x8" ? 8 : 10;
  return { ...read, facts: { ...read.facts, propeller: { ...read.facts.propeller, pitchIn } } };
}

/** One log, checked with the propeller that was fitted and the air the pilot noted. */
export function checkedLog({ file, propeller }: TrueLog): CheckedLogWithRows {
  const { facts, budget, readings } = ternWith(propeller);
  const ambientC = NOTES.find((note) => note.file === file)?.ambientC ?? null;
  return checkLog(readFileSync(resolve(FOLDER, file)), {
    file,
    sha256: "",
    aircraft: facts.name,
    facts,
    budget,
    readings,
    options: {
      columns: new Map(),
      units: new Map(),
      rateHz: null,
      decimalMark: null,
      delimiter: null,
      dateOrder: null,
      cells: null,
      polePairs: null,
    },
    day: { ambientC, startPct: null },
  });
}

/** The flights of one log, checked likewise. */
export function loggedFlights(log: TrueLog): readonly LoggedFlight[] {
  const { facts } = ternWith(log.propeller);
  const { check } = checkedLog(log);
  return check.flights.map(({ kind, complete, measures }) => ({ kind, complete, measures, facts }));
}
