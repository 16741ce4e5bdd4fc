import { join } from "node:path";
import type { ReadingOptions } from "../../log/reading/index.ts";
import { BOOK_FILE, flightsOfAircraft, readFlights } from "../../season/logbook/index.ts";
import { withCells } from "./aircraftOption.ts";
import type { Call } from "./commandDefinition.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { type KnownOrExit, knownFromLogs, knownOf } from "./knownLogs.ts";
import { aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { bookFolder } from "./logbook/bookFolder.ts";
import { openBook } from "./logbook/openBook.ts";
import { tellStopped } from "./logbook/tellStopped.ts";
import { planSentences } from "./planSentences.ts";
import type { Talk } from "./talk.ts";

/**
 * The aircraft and its parts as measured: in the logs of --log, else in the logbook's flights (of --book, or where
 * the logbook usually lies). Without either the aircraft file and published ranges alone.
 */
export async function knownParts(
  call: Call,
  io: Io,
  talk: Talk,
  options: ReadingOptions,
): Promise<KnownOrExit> {
  const hasLogs = call.texts("log").length > 0;
  if (hasLogs && call.has("book")) throw usageFailure(planSentences.logOrBook(call.name));
  if (hasLogs || !hasBook(call, io)) return knownFromLogs(call, io, talk, options);
  return knownFromBook(call, io, talk, options.cells);
}

/** A book that is named, or one that lies where the logbook usually does. */
function hasBook(call: Call, io: Io): boolean {
  if (call.has("book")) return true;
  try {
    return io.files.size(join(bookFolder(null, io), BOOK_FILE)) !== null;
  } catch {
    // No usual place on this machine, or one that cannot be looked into: nothing was asked of it.
    return false;
  }
}

async function knownFromBook(call: Call, io: Io, talk: Talk, cells: number | null): Promise<KnownOrExit> {
  const book = openBook(call, io, talk);
  const { chosen, index } = await book.read((files) => ({
    chosen: aircraftOfCall(call, io)(files),
    index: readFlights(files, book.frame.digest),
  }));
  if (chosen.state === "stopped") return { exit: tellStopped(call, book.folder, chosen.notices, talk) };
  const { name } = chosen.aircraft;
  const flights = flightsOfAircraft(index.entries, name).map(
    ({ flight, check, facts, load, given: { pack } }) => ({ ...check, facts, load, pack, name: flight }),
  );
  if (flights.length === 0 && call.has("book")) talk.say(planSentences.noFlightsInBook(name));
  const input = withCells({ state: "read", aircraft: chosen.aircraft }, cells);
  const aircraft = input.state === "read" ? input.aircraft : chosen.aircraft;
  return knownOf(aircraft, flights);
}
