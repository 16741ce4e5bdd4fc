import { parseAircraftFile, type ReadAircraft } from "../../../src/aircraft/index.ts";
import { checkLog } from "../../../src/flight/check/index.ts";
import type { ReadingOptions } from "../../../src/log/reading/index.ts";
import type { GivenFacts } from "../../../src/season/logbook/index.ts";
import type { TrendFlight } from "../../../src/season/trends/index.ts";

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

export const NOTHING_SAID: GivenFacts = {
  pack: null,
  propeller: null,
  ambientC: null,
  startPct: null,
  putBackMah: null,
  putBackFlights: [],
  flownS: null,
  date: null,
  note: null,
};

export function aircraftOf(text: string): ReadAircraft {
  const read = parseAircraftFile(text, "aircraft.json");
  if (read.state === "read") return read;
  throw new Error(`the aircraft file was refused: ${read.notices.map((each) => each.text).join(" ")}`);
}

/** The flights of one log as a logbook keeps them. @param names one per flight of the log */
export function bookFlights(
  bytes: Uint8Array,
  aircraft: ReadAircraft,
  names: readonly string[],
  given: Partial<GivenFacts>,
): readonly TrendFlight[] {
  const said = { ...NOTHING_SAID, ...given };
  const [diameterIn = 0, pitchIn = 0] = (said.propeller ?? "").split("x").map(Number);
  const propeller = { ...aircraft.facts.propeller, ...(said.propeller ? { diameterIn, pitchIn } : {}) };
  const facts = { ...aircraft.facts, propeller };
  const { check, analysed } = checkLog(bytes, {
    file: `${names[0]}.csv`,
    sha256: names.join("+"),
    aircraft: facts.name,
    facts,
    budget: aircraft.budget,
    readings: aircraft.readings,
    options: NO_ANSWERS,
    day: { ambientC: said.ambientC, startPct: said.startPct },
  });
  return check.flights.map((flight, index) => ({
    format: "tallywatt/flight",
    version: 1,
    flight: names[index] ?? `${names[0]}-${index + 1}`,
    sequence: index,
    aircraft: facts.name ?? "",
    log: {
      path: "",
      file: check.log.file,
      sha256: check.log.sha256,
      index,
      flights: check.flights.length,
      headerSignature: null,
    },
    startsAt: flight.startedAt,
    fingerprint: null,
    given: said,
    facts,
    budget: aircraft.budget,
    release: "0",
    check: flight,
    load: analysed[index]?.load ?? null,
    notices: [],
  }));
}
