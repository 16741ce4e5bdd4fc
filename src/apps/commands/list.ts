import { flightsOfAircraft, type LogbookEntry, listResult, readFlights } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { putBackLines } from "./logbook/calibrationLine.ts";
import { flightLine } from "./logbook/flightLine.ts";
import { BOOK_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { logbookSentences } from "./logbook/sentences.ts";
import { oneLine } from "./printable.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "the flights of the logbook, in the order they were flown",
  examples: [
    { line: "tallywatt list", about: "a line a flight" },
    { line: "tallywatt list --json", about: "the same with every measure, for other programs" },
  ],
  options: [BOOK_OPTION, { flags: "--aircraft <NAME>", help: "only flights of this aircraft" }, JSON_OPTION],
  run,
};

function noFlights(aircraft: string | null, entries: readonly LogbookEntry[], folder: string): string {
  const names = [...new Set(entries.map((entry) => entry.aircraft))];
  return aircraft === null || names.length === 0
    ? logbookSentences.empty(folder)
    : logbookSentences.noFlightOf(aircraft, names);
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const { folder, frame, read } = openBook(call, io, talk);
  const index = await read((files) => readFlights(files, frame.digest));
  const aircraft = call.text("aircraft");
  if (call.has("json")) talk.data(JSON.stringify(listResult(index, aircraft), null, 2));
  else {
    const flights = flightsOfAircraft(index.entries, aircraft);
    for (const entry of flights) talk.data(flightLine(entry));
    for (const line of putBackLines(flights)) talk.data(oneLine(line));
    if (flights.length === 0) talk.say(noFlights(aircraft, index.entries, folder));
  }
  if (index.damaged.length > 0) talk.say(logbookSentences.damagedCount(index.damaged.length));
  return EXIT.done;
}
