import { type Budget, NO_BUDGET } from "../../../aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../../aircraft/facts.ts";
import {
  aircraftKeys,
  aircraftValues,
  editedAircraft,
  parseAircraftFile,
  type RememberedReading,
  starterAircraftFile,
} from "../../../aircraft/index.ts";
import type {
  AircraftAnswer,
  AircraftKeysAnswer,
  AircraftWork,
  EditAircraftAnswer,
  EditAircraftWork,
} from "../messages.ts";

export interface Aircraft {
  readonly name: string | null;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

const NONE: Aircraft = { name: null, facts: NO_FACTS, budget: NO_BUDGET, readings: [] };
const STARTER_NAME = "My aircraft";

/** The aircraft of a text that was taken in before; without one, nothing is known. */
export function aircraftOf(text: string | null): Aircraft {
  if (text === null) return NONE;
  const read = parseAircraftFile(text, "aircraft file");
  if (read.state !== "read") throw new Error(read.notices[0]?.text ?? "the aircraft file cannot be used");
  const { facts, budget, readings } = read;
  return { name: facts.name, facts, budget, readings };
}

/** Says whether an aircraft file can be used, whose it is and what it gives. */
export function takeAircraft({ text, file }: Pick<AircraftWork, "text" | "file">): AircraftAnswer {
  const read = parseAircraftFile(text, file);
  if (read.state !== "read")
    return { kind: "aircraft", name: null, notices: read.notices, values: {}, measuring: "" };
  const { facts, readings } = read;
  const measuring = JSON.stringify({ ...facts, name: null, readings });
  return { kind: "aircraft", name: facts.name, notices: [], values: aircraftValues(text), measuring };
}

export function editAircraft({ text, file, changes }: EditAircraftWork): EditAircraftAnswer {
  const edited = editedAircraft(text, changes);
  const values = aircraftValues(edited);
  return { ...takeAircraft({ text: edited, file }), kind: "editAircraft", text: edited, values };
}

export function formKeys(): AircraftKeysAnswer {
  return { kind: "aircraftKeys", keys: aircraftKeys(), starter: starterAircraftFile(STARTER_NAME) };
}
