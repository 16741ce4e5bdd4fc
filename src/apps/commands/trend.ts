import { readKeptFlights } from "../../season/logbook/index.ts";
import { type TrendResult, trendsOf } from "../../season/trends/index.ts";
import { sha256Of } from "../disk/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { AIRCRAFT_OPTION, aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { BOOK_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { tellStopped } from "./logbook/tellStopped.ts";
import { oneLine } from "./printable.ts";
import type { Talk } from "./talk.ts";
import { trendLines } from "./trendLines.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "what creeps or jumps from flight to flight, and what only looks so",
  examples: [
    { line: "tallywatt trend", about: "the only aircraft of the logbook" },
    { line: "tallywatt trend --aircraft Tern --json", about: "one of several, prints JSON" },
  ],
  options: [BOOK_OPTION, AIRCRAFT_OPTION, JSON_OPTION],
  notes: ["A change of propeller, pack, motor or controller starts a new series by itself."],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const aircraftOf = aircraftOfCall(call, io);
  const book = openBook(call, io, talk);
  const found = await book.read((files) => {
    const chosen = aircraftOf(files);
    if (chosen.state === "stopped") return chosen;
    const { name } = chosen.aircraft;
    const { entries, damaged } = readKeptFlights(files, sha256Of);
    const own = entries.filter((entry) => entry.aircraft === name);
    return { state: "trends", result: trendsOf(own, name), damaged } as const;
  });
  if (found.state === "stopped") return tellStopped(call, call.name, found.notices, talk);
  for (const { path, why } of found.damaged) talk.say(oneLine(`${path}: ${why}`));
  tell(found.result, call, talk);
  return EXIT.done;
}

function tell(result: TrendResult, call: Call, talk: Talk): void {
  if (call.has("json")) talk.data(JSON.stringify(result, null, 2));
  else talk.data(trendLines(result).map(oneLine).join("\n"));
}
