import { flightsOfAircraft, readBriefFlights, unknownPack } from "../../season/logbook/index.ts";
import { timerResult } from "../../season/timer/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { givenNumber } from "./knownNumbers.ts";
import { AIRCRAFT_OPTION, aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { textOption } from "./logbook/givenOptions.ts";
import { BOOK_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { tellStopped } from "./logbook/tellStopped.ts";
import { timerLines } from "./logbook/timerLines.ts";
import type { Talk } from "./talk.ts";

const LONGEST_PACK = 60;

export const command: CommandDefinition = {
  operands: "",
  about: "a flight timer from the logged flights, and what sets it",
  examples: [
    { line: "tallywatt timer", about: "for the next flight on what is fitted" },
    { line: "tallywatt timer --pack A --ambient 30 --reserve 30", about: "for a pack, a day and a reserve" },
  ],
  options: [
    BOOK_OPTION,
    AIRCRAFT_OPTION,
    { flags: "--pack <NAME>", help: "the pack that will fly" },
    { flags: "--ambient <C>", help: "air temperature to reckon with; else the hot day" },
    { flags: "--reserve <PCT>", help: "charge to land with, percent; else the aircraft file's" },
    { flags: "--start-pct <N>", help: "state of charge at the start, percent" },
    JSON_OPTION,
  ],
  notes: ["A suggestion from logs: makers' limits and your club's safety code come first."],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const book = openBook(call, io, talk);
  const { chosen, index } = await book.read((files) => ({
    chosen: aircraftOfCall(call, io)(files),
    index: readBriefFlights(files, book.frame.digest),
  }));
  if (chosen.state === "stopped") return tellStopped(call, book.folder, chosen.notices, talk);
  const { facts, budget, name } = chosen.aircraft;
  const entries = flightsOfAircraft(index.entries, name);
  const next = {
    pack: textOption(call, "pack", LONGEST_PACK),
    ambientC: givenNumber(call, "ambient", "ambientC"),
    reservePct: givenNumber(call, "reserve", "reservePct") ?? budget.reservePct,
    startPct: givenNumber(call, "start-pct", "startPct"),
  };
  const packNote = unknownPack(next.pack, entries);
  if (packNote !== null) talk.say(packNote);
  const result = timerResult(entries, facts, next);
  if (call.has("json")) talk.data(JSON.stringify(result, null, 2));
  else talk.data(timerLines(result, result.calibration).join("\n"));
  return EXIT.done;
}
