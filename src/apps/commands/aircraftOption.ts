import { type Budget, NO_BUDGET } from "../../aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../aircraft/facts.ts";
import type { RememberedReading } from "../../aircraft/index.ts";
import { withStatedCells } from "../../flight/check/index.ts";
import { aircraftText, type UnusableAircraft } from "./aircraftText.ts";
import type { Io } from "./io.ts";

/** What the commands know of the aircraft; without a file the defaults of one nobody described. */
export interface Aircraft {
  readonly name: string | null;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

export type AircraftInput = { readonly state: "read"; readonly aircraft: Aircraft } | UnusableAircraft;

const NO_AIRCRAFT: Aircraft = { name: null, facts: NO_FACTS, budget: NO_BUDGET, readings: [] };

/** The aircraft file named by --aircraft; `file` null reads none. */
export async function readAircraft(file: string | null, io: Io): Promise<AircraftInput> {
  if (file === null) return { state: "read", aircraft: NO_AIRCRAFT };
  const text = aircraftText(file, io);
  if (typeof text !== "string") return text;
  // Loaded only when there is a file: a check without one starts sooner.
  const { parseAircraftFile } = await import("../../aircraft/index.ts");
  const parsed = parseAircraftFile(text, file);
  if (parsed.state === "refusal") return { state: "unusable", notices: parsed.notices };
  const { facts, budget, readings } = parsed;
  return { state: "read", aircraft: { name: facts.name, facts, budget, readings } };
}

/** --cells stands in for the aircraft file, and answers a question about its cell count. */
export function withCells(input: AircraftInput, cells: number | null): AircraftInput {
  if (cells === null || input.state !== "read") return input;
  return {
    state: "read",
    aircraft: { ...input.aircraft, facts: withStatedCells(input.aircraft.facts, cells) },
  };
}
