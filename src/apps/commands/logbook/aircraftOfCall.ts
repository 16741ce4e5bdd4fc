import { resolve } from "node:path";
import { parseAircraftFile } from "../../../aircraft/index.ts";
import {
  aircraftOfBook,
  type BookFiles,
  bringIn,
  type ChosenAircraft,
  chooseAircraft,
} from "../../../season/logbook/index.ts";
import { aircraftText } from "../aircraftText.ts";
import type { Call, OptionDefinition } from "../commandDefinition.ts";
import type { Io } from "../io.ts";

export const AIRCRAFT_OPTION: OptionDefinition = {
  flags: "--aircraft <A>",
  help: "an aircraft file, or a name in the logbook",
};

/**
 * The aircraft of a call: a file where there is one of that name, else the aircraft of the book with that
 * name, else the only one of the book.
 */
export function aircraftOfCall(call: Call, io: Io): (files: BookFiles) => ChosenAircraft {
  const wanted = call.text("aircraft");
  if (wanted === null || !isFile(wanted, io)) {
    return (files) => chooseAircraft(aircraftOfBook(files), wanted);
  }
  const text = aircraftText(wanted, io);
  if (typeof text !== "string") return () => ({ state: "stopped", notices: text.notices });
  const parsed = parseAircraftFile(text, wanted);
  if (parsed.state === "refusal") return () => ({ state: "stopped", notices: parsed.notices });
  return (files) => ({ state: "chosen", aircraft: bringIn(aircraftOfBook(files), { ...parsed, text }) });
}

/** A name with an ending or a folder can only mean a file: a missing one is then told as such. */
function isFile(wanted: string, io: Io): boolean {
  return /[\\/]|\.json$/i.test(wanted) || io.files.size(resolve(io.workFolder, wanted)) !== null;
}
