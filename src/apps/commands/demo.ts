import { join, relative, resolve } from "node:path";
import type { Facts } from "../../aircraft/facts.ts";
import { parseAircraftFile } from "../../aircraft/index.ts";
import type { CheckedLogWithRows } from "../../flight/check/index.ts";
import { NO_READING_OPTIONS } from "../../log/reading/index.ts";
import {
  type BookAircraft,
  type GivenFacts,
  judgedFacts,
  keptReading,
  NOTHING_GIVEN,
} from "../../season/logbook/index.ts";
import { flightReport, seasonPage } from "../../show/report/index.ts";
import { checkBytes } from "./checkOne.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { DemoBook } from "./demoBook.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { Failure } from "./failure.ts";
import type { Io } from "./io.ts";
import { exitOfNotices, noticeCount } from "./noticeLines.ts";
import { packageText, releaseOf } from "./release.ts";
import { demoSentences, inputSentences } from "./sentences.ts";
import { commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";
import { writeReport } from "./writeOutput.ts";

const SEASON = join("fixtures", "tern");
const DEFAULT_FOLDER = "demo-reports";
const FRONT_PAGE = "season.html";

export const command: CommandDefinition = {
  operands: "[DIR]",
  about: "analyse the invented season of the floatplane Tern: a season report and one for each log",
  examples: [
    { line: "tallywatt demo", about: `writes the reports into ${DEFAULT_FOLDER}` },
    { line: "tallywatt demo my-reports", about: "writes them into my-reports" },
  ],
  options: [{ flags: "--force", help: "replace reports that tallywatt did not write" }],
  run,
};

/** What the pilot's notes say of one log. */
interface SeasonLog {
  readonly file: string;
  readonly date: string;
  readonly pack: string;
  readonly propeller: string;
  readonly ambientC: number;
  readonly putBackMah: number | null;
  readonly note: string;
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const folder = call.operands[0] ?? DEFAULT_FOLDER;
  const season = JSON.parse(packageText(io, join(SEASON, "season.json"))) as {
    readonly logs: readonly SeasonLog[];
  };
  const aircraft = demoAircraft(io);
  const book = new DemoBook(releaseOf(io));
  const links = new Map<string, string>();
  const lines: string[] = [];
  const write = (name: string, html: string): void =>
    writeReport(io, resolve(io.workFolder, folder, name), html, call.has("force"));
  for (const log of season.logs) {
    const name = `${log.file.replace(/\.csv$/, "")}.html`;
    const { bytes, checked, facts } = checkLogOfSeason(io, log, aircraft);
    write(name, flightReport({ checked, facts, budget: aircraft.budget, release: releaseOf(io) }));
    const flights = keep(book, log, bytes, checked, aircraft);
    flights.forEach((flight, index) => void links.set(flight, `${name}#f${index + 1}`));
    lines.push(demoSentences.line(name, headlines(checked), noticeCount(checked.check.log.notices)));
    await io.pause();
  }
  write(FRONT_PAGE, seasonPage(book.flights(), aircraft, releaseOf(io), links));
  talk.data(demoSentences.season(FRONT_PAGE, book.flights().length));
  talk.data(lines.join("\n"));
  talk.data(demoSentences.done(season.logs.length + 1, folder, join(folder, FRONT_PAGE)));
  talk.data(`Next: ${nextCommand(io, season.logs)}`);
  return EXIT.done;
}

/** Keeps a log's flights in the demo's book and gives their names. */
function keep(
  book: DemoBook,
  log: SeasonLog,
  bytes: Uint8Array,
  checked: CheckedLogWithRows,
  aircraft: BookAircraft,
): readonly string[] {
  const reading = keptReading(NO_READING_OPTIONS);
  const { file } = log;
  const request = {
    bytes,
    file,
    checked,
    aircraft,
    isOfBook: true,
    given: givenOf(log),
    reading,
    chargedWith: [],
    isAgain: false,
  };
  const added = book.add(request);
  if (added.state !== "stopped") return added.flights;
  throw new Failure(
    EXIT.bug,
    inputSentences.ownBug(`${file}: ${added.notices.map(({ text }) => text).join(" ")}`),
  );
}

function givenOf({ pack, propeller, ambientC, putBackMah, date, note }: SeasonLog): GivenFacts {
  return { ...NOTHING_GIVEN, pack, propeller, ambientC, putBackMah, date, note: note === "" ? null : note };
}

const NEXT_LOG = "flight-09.csv";

/** A check of one log in the air of the notes, so that it says what the demo's own line says; its propeller is the file's. */
function nextCommand(io: Io, logs: readonly SeasonLog[]): string {
  const log = logs.find(({ file }) => file === NEXT_LOG);
  if (log === undefined) throw new Failure(EXIT.bug, inputSentences.packageIncomplete(NEXT_LOG));
  const files = [seasonFile(io, log.file), "--aircraft", seasonFile(io, "aircraft.json")];
  return commandLine(["check", ...files, "--ambient", String(log.ambientC)]);
}

/** A file of the season as it must be typed here. */
function seasonFile(io: Io, name: string): string {
  const path = join(io.packageFolder, SEASON, name);
  const below = relative(io.workFolder, path);
  return below.startsWith("..") ? path : below;
}

function demoAircraft(io: Io): BookAircraft {
  const path = join(SEASON, "aircraft.json");
  const text = packageText(io, path);
  const parsed = parseAircraftFile(text, path);
  if (parsed.state !== "read") throw new Failure(EXIT.bug, inputSentences.packageIncomplete(path));
  return { ...parsed, name: parsed.facts.name ?? "", path, text };
}

/** A log of the season, checked with the propeller that was on that day. */
function checkLogOfSeason(
  io: Io,
  log: SeasonLog,
  aircraft: BookAircraft,
): { readonly bytes: Uint8Array; readonly checked: CheckedLogWithRows; readonly facts: Facts } {
  const name = join(SEASON, log.file);
  const bytes = io.files.read(join(io.packageFolder, name));
  if (bytes === null) throw new Failure(EXIT.bug, inputSentences.packageIncomplete(name));
  const facts = judgedFacts(aircraft.facts, givenOf(log), null);
  const checked = checkBytes(log.file, bytes, {
    aircraft: { ...aircraft, facts },
    options: NO_READING_OPTIONS,
    day: { ambientC: log.ambientC, startPct: null },
  });
  const { notices } = checked.check.log;
  if (exitOfNotices(notices) === EXIT.done) return { bytes, checked, facts };
  throw new Failure(EXIT.bug, inputSentences.ownBug(`${name}: ${notices.map(({ text }) => text).join(" ")}`));
}

function headlines({ check }: CheckedLogWithRows): string {
  return check.flights.map(({ headline }) => headline).join(" ");
}
