import { quantityText } from "../../base/quantity/index.ts";
import { MEASURE_NAMES, MEASURE_WORDS } from "../../flight/analysis/index.ts";
import type { KeptFlight } from "../../season/logbook/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { givenWords } from "./logbook/flightLine.ts";
import { flightsOfCall } from "./logbook/flightsOfCall.ts";
import { BOOK_OPTION, JSON_OPTION, openBook } from "./logbook/openBook.ts";
import { oneLine } from "./printable.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "<FLIGHT>",
  about: "everything the logbook keeps of one flight",
  examples: [
    { line: "tallywatt show 2026-06-14-1", about: "its facts, its measures and how it was judged" },
    { line: "tallywatt show 2026-06-14-1 --json", about: "the entry as the logbook keeps it" },
  ],
  options: [BOOK_OPTION, JSON_OPTION],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const { frame, read } = openBook(call, io, talk);
  const [found] = await read((files) => flightsOfCall(call.operands, files, frame.digest));
  if (found === undefined) return EXIT.unusable;
  const { entry } = found;
  if (call.has("json")) talk.data(JSON.stringify(entry, null, 2));
  else talk.data(flightText(entry).join("\n"));
  return EXIT.done;
}

function flightText(entry: KeptFlight): readonly string[] {
  const { flight, aircraft, log, given, release, check, notices, startsAt } = entry;
  const known = MEASURE_NAMES.filter((name) => check.measures[name].value !== null);
  return [
    `${flight}: ${aircraft}, ${startsAt ?? "day not known"}, log ${log.file}, analysed by release ${release}`,
    check.headline,
    ...(givenWords(entry).length === 0 ? [] : [`Given: ${givenWords(entry).join(", ")}`]),
    ...(given.note === null ? [] : [oneLine(`Note: ${given.note}`)]),
    ...known.map((name) => indented(`${MEASURE_WORDS[name]}: ${quantityText(check.measures[name])}`)),
    ...check.judgements.map(({ text }) => indented(text)),
    ...notices.map(({ severity, text }) => indented(`${severity}: ${text}`)),
  ];
}

function indented(text: string): string {
  return `  ${oneLine(text)}`;
}
