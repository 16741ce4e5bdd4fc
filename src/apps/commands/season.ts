import { basename, dirname, join, resolve } from "node:path";
import { type KeptFlight, readKeptFlights } from "../../season/logbook/index.ts";
import { type SeasonOfAircraft, seasonPage } from "../../show/report/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { AIRCRAFT_OPTION, aircraftOfCall } from "./logbook/aircraftOfCall.ts";
import { BOOK_OPTION, type OpenBook, openBook } from "./logbook/openBook.ts";
import { tellStopped } from "./logbook/tellStopped.ts";
import { oneLine } from "./printable.ts";
import { writeFlightReports } from "./seasonFlightReports.ts";
import { seasonSentences } from "./seasonSentences.ts";
import { usageSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";
import { refuseForeignReport, writeReport } from "./writeOutput.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "the season report: timer, trends, packs and every flight on one page",
  examples: [
    { line: "tallywatt season --report=season.html", about: "the only aircraft of the logbook" },
    {
      line: "tallywatt season --aircraft Tern --report=tern.html --with-flights",
      about: "and each flight's own report in the folder tern-flights beside it",
    },
  ],
  options: [
    BOOK_OPTION,
    AIRCRAFT_OPTION,
    { flags: "--report [FILE.html]", help: "where the page goes" },
    { flags: "--with-flights", help: "write each flight's own report too, and link it" },
    { flags: "--force", help: "replace files that tallywatt did not write" },
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const path = reportPath(call);
  const book = openBook(call, io, talk);
  const aircraftOf = aircraftOfCall(call, io);
  const { chosen, kept } = await book.read((files) => ({
    chosen: aircraftOf(files),
    kept: readKeptFlights(files, book.frame.digest),
  }));
  if (chosen.state === "stopped") return tellStopped(call, book.folder, chosen.notices, talk);
  for (const { path: file, why } of kept.damaged) talk.say(oneLine(`${file}: ${why}`));
  const { aircraft } = chosen;
  const name = aircraft.name.toLowerCase();
  const entries = kept.entries.filter((entry) => entry.aircraft.toLowerCase() === name);
  await writeSeason(entries, aircraft, path, { call, book, io, talk });
  return EXIT.done;
}

interface SeasonWork {
  readonly call: Call;
  readonly book: OpenBook;
  readonly io: Io;
  readonly talk: Talk;
}

/** The flights' reports first, so that the page links only what is there. */
async function writeSeason(
  entries: readonly KeptFlight[],
  aircraft: SeasonOfAircraft,
  path: string,
  { call, book, io, talk }: SeasonWork,
): Promise<void> {
  const isForced = call.has("force");
  const target = resolve(io.workFolder, path);
  refuseForeignReport(io, target, isForced);
  const folder = join(dirname(path), flightFolder(path));
  const names = call.has("with-flights")
    ? await writeFlightReports(entries, { book, io, talk, folder, isForced })
    : null;
  const links = names === null ? null : linksOf(names, flightFolder(path));
  writeReport(io, target, seasonPage(entries, aircraft, book.frame.release, links), isForced);
  talk.data(seasonSentences.wrote(path, entries.length));
  if (names !== null) talk.data(seasonSentences.wroteFlights(names.size, folder));
}

/** Throws a usage Failure without a name for the page. */
function reportPath(call: Call): string {
  const path = call.text("report");
  if (path === null || path === "") throw usageFailure(seasonSentences.reportMissing());
  if (!/\.html?$/i.test(path)) throw usageFailure(usageSentences.reportNotHtml(path));
  return path;
}

/** "reports/tern.html" to "tern-flights". */
function flightFolder(path: string): string {
  return `${basename(path).replace(/\.html?$/i, "")}-flights`;
}

function linksOf(names: ReadonlyMap<string, string>, folder: string): ReadonlyMap<string, string> {
  return new Map([...names].map(([flight, name]) => [flight, `${pathStep(folder)}/${pathStep(name)}`]));
}

/** One step of a path as a link writes it. */
function pathStep(name: string): string {
  const escaped = (sign: string): string => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`;
  return encodeURIComponent(name).replace(/[!'()*]/g, escaped);
}
