import { type Budget, NO_BUDGET } from "../../../aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../../aircraft/facts.ts";
import { parseAircraftFile, type RememberedReading } from "../../../aircraft/index.ts";
import type { AircraftAnswer, AircraftWork } from "../messages.ts";

export interface Aircraft {
  readonly name: string | null;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

const NONE: Aircraft = { name: null, facts: NO_FACTS, budget: NO_BUDGET, readings: [] };

/** The aircraft of a text that was taken in before; without one, nothing is known. */
export function aircraftOf(text: string | null): Aircraft {
  if (text === null) return NONE;
  const read = parseAircraftFile(text, "aircraft file");
  if (read.state !== "read") throw new Error(read.notices[0]?.text ?? "the aircraft file cannot be used");
  const { facts, budget, readings } = read;
  return { name: facts.name, facts, budget, readings };
}

/** Says whether an aircraft file can be used, and whose it is. */
export function takeAircraft({ text, file }: AircraftWork): AircraftAnswer {
  const read = parseAircraftFile(text, file);
  return read.state === "read"
    ? { kind: "aircraft", name: read.facts.name, notices: [] }
    : { kind: "aircraft", name: null, notices: read.notices };
}
