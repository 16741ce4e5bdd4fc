import { parseAircraftFile, type ReadAircraft } from "../../src/aircraft/index.ts";
import { type CheckedFlight, type CheckedLog, checkLog } from "../../src/flight/check/index.ts";
import type { ReadingOptions } from "../../src/log/reading/index.ts";

const NO_ANSWERS: ReadingOptions = {
  columns: new Map(),
  units: new Map(),
  rateHz: null,
  decimalMark: null,
  delimiter: null,
  dateOrder: null,
  cells: null,
  polePairs: null,
};

export interface Checked {
  readonly log: CheckedLog;
  readonly flights: readonly CheckedFlight[];
}

/** The public pipeline with an aircraft file and no option: what `check LOG --aircraft A` computes. */
export function checkBytes(bytes: Uint8Array, aircraftText: string, ambientC: number | null = null): Checked {
  const aircraft = aircraftOf(aircraftText);
  const { check } = checkLog(bytes, {
    file: "log.csv",
    sha256: "",
    aircraft: aircraft.facts.name,
    facts: aircraft.facts,
    budget: aircraft.budget,
    readings: aircraft.readings,
    options: NO_ANSWERS,
    day: { ambientC, startPct: null },
  });
  return { log: check.log, flights: check.flights };
}

function aircraftOf(text: string): ReadAircraft {
  const read = parseAircraftFile(text, "aircraft.json");
  if (read.state === "read") return read;
  throw new Error(
    `the generator's aircraft file was refused: ${read.notices.map((each) => each.text).join(" ")}`,
  );
}

/** Questions and refusals that stopped a check, in words; empty when it went through. */
export function stoppedBy(checked: Checked): string {
  const stops = checked.log.notices.filter(
    ({ severity }) => severity === "question" || severity === "refusal",
  );
  return stops.map(({ code, text }) => `${code}: ${text}`).join(" ");
}
