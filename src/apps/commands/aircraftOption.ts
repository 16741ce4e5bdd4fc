import { resolve } from "node:path";
import { type Budget, NO_BUDGET } from "../../aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../aircraft/facts.ts";
import type { RememberedReading } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { withStatedCells } from "../../flight/check/index.ts";
import { reasonOf } from "./failure.ts";
import type { Io } from "./io.ts";
import { inputSentences } from "./sentences.ts";

/** What the commands know of the aircraft; without a file the defaults of one nobody described. */
export interface Aircraft {
  readonly name: string | null;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
}

interface Unusable {
  readonly state: "unusable";
  readonly notices: readonly Notice[];
}

export type AircraftInput = { readonly state: "read"; readonly aircraft: Aircraft } | Unusable;

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

/** The text of an aircraft file, or why there is none. */
export function aircraftText(file: string, io: Io): string | Unusable {
  const bytes = bytesOf(file, io);
  if (typeof bytes === "string") return refused("aircraft-unreadable", bytes);
  return textOf(bytes) ?? refused("aircraft-not-text", inputSentences.aircraftNotText(file));
}

/** --cells stands in for the aircraft file, and answers a question about its cell count. */
export function withCells(input: AircraftInput, cells: number | null): AircraftInput {
  if (cells === null || input.state !== "read") return input;
  return {
    state: "read",
    aircraft: { ...input.aircraft, facts: withStatedCells(input.aircraft.facts, cells) },
  };
}

/** The bytes, or the sentence that says why there are none. */
function bytesOf(file: string, io: Io): Uint8Array | string {
  try {
    return io.files.read(resolve(io.workFolder, file)) ?? inputSentences.aircraftMissing(file);
  } catch (error) {
    return inputSentences.aircraftUnreadable(file, reasonOf(error));
  }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function refused(code: string, text: string): Unusable {
  return { state: "unusable", notices: [{ code, severity: "refusal", text }] };
}
