import { type Facts, NO_FACTS } from "../../src/aircraft/facts.ts";
import type { DayFacts } from "../../src/flight/analysis/index.ts";
import type { Recording } from "../../src/log/recording/index.ts";
import {
  type AircraftFile,
  type LoggedFlight,
  type PartsTruth,
  type RandomFlightOptions,
  randomFlightSpec,
  type SortieTruth,
  simulateFlight,
} from "../generator/index.ts";

/** A simulated log, what the pilot states, and the truth. */
export interface RandomFlight {
  readonly recording: Recording;
  readonly facts: Facts;
  readonly day: DayFacts;
  /** The last 1.5 s of the full-throttle run-up on the ground. */
  readonly plateau: { readonly firstRow: number; readonly lastRow: number } | null;
  readonly truth: PartsTruth;
  readonly sortie: SortieTruth;
}

/** One seeded flight of a random aircraft, logged by sensors within their accuracy. */
export function randomFlight(seed: number, options: RandomFlightOptions = {}): RandomFlight {
  const flight = simulateFlight(randomFlightSpec(seed, options));
  const sortie = flight.truth.sorties[0]!;
  return {
    recording: recordingOf(flight.logged),
    facts: statedFacts(flight.facts),
    day: { ambientC: flight.statedAmbientC, startPct: null },
    plateau: runUpPlateau(flight.logged, sortie.takeOffS ?? 0),
    truth: flight.truth.parts,
    sortie,
  };
}

/** Stated facts as the aircraft file would give them. */
export function statedFacts(file: AircraftFile): Facts {
  return {
    ...NO_FACTS,
    name: file.name,
    flyingMassKg: file.flyingMassKg,
    pack: { ...NO_FACTS.pack, ...file.pack } as Facts["pack"],
    controller: { ...NO_FACTS.controller, ...file.controller },
    motor: { ...NO_FACTS.motor, ...file.motor },
    propeller: { ...NO_FACTS.propeller, ...file.propeller } as Facts["propeller"],
    field: file.field,
    sensors: file.sensors,
  };
}

/** The simulated rows as a recording without holes or repairs. */
export function recordingOf(logged: LoggedFlight): Recording {
  return {
    rows: logged.rows,
    dataLines: logged.rows,
    rowsUsed: logged.rows,
    durationS: logged.timeS[logged.rows - 1]!,
    timeS: logged.timeS,
    channels: logged.channels,
    lineOfRow: (row) => row + 2,
    clockTextOfRow: () => null,
    stepS: logged.timeS[1]! - logged.timeS[0]!,
    holes: [],
    repairs: [],
    dead: [],
    notices: [],
  };
}

function runUpPlateau(logged: LoggedFlight, takeOffS: number) {
  const throttle = logged.channels.get("throttle");
  if (throttle === undefined) return null;
  let lastRow = -1;
  for (let row = 0; logged.timeS[row]! < takeOffS; row++) if (throttle[row]! >= 98) lastRow = row;
  if (lastRow < 0) return null;
  let firstRow = lastRow;
  while (firstRow > 0 && logged.timeS[lastRow]! - logged.timeS[firstRow - 1]! <= 1.5) firstRow--;
  return { firstRow, lastRow };
}
