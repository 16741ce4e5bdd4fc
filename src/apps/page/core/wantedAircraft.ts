import { parseAircraftFile } from "../../../aircraft/index.ts";
import {
  aircraftOfBook,
  type BookFiles,
  bringIn,
  type ChosenAircraft,
  chooseAircraft,
} from "../../../season/logbook/index.ts";
import type { WantedAircraft } from "../messages.ts";

/** The aircraft of a text as the book would keep it, else the book's own by name, else its only one. */
export function wantedAircraft(wanted: WantedAircraft, files: BookFiles): ChosenAircraft {
  if (wanted === null || "name" in wanted) return chooseAircraft(aircraftOfBook(files), wanted?.name ?? null);
  const parsed = parseAircraftFile(wanted.text, wanted.file);
  if (parsed.state === "refusal") return { state: "stopped", notices: parsed.notices };
  return { state: "chosen", aircraft: bringIn(aircraftOfBook(files), { ...parsed, text: wanted.text }) };
}
