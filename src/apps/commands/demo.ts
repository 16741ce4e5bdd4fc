import { join, relative, resolve } from "node:path";
import { parseAircraftFile } from "../../aircraft/index.ts";
import type { CheckedLogWithRows } from "../../flight/check/index.ts";
import type { ReadingOptions } from "../../log/reading/index.ts";
import { flightReport } from "../../show/report/index.ts";
import type { Aircraft } from "./aircraftOption.ts";
import { checkBytes } from "./checkOne.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
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

export const command: CommandDefinition = {
  operands: "[DIR]",
  about: "analyse the invented season of the floatplane Tern and write a report for each log",
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
  readonly propeller: string;
  readonly ambientC: number;
}

const NO_ANSWERS: ReadingOptions = {
  columns: new Map(),
  units: new Map(),
  rateHz: null,
  decimalMark: null,
  delimiter: null,
  dateOrder: null,
  cells: null,
  polePairs: null,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const folder = call.operands[0] ?? DEFAULT_FOLDER;
  const season = JSON.parse(packageText(io, join(SEASON, "season.json"))) as {
    readonly logs: readonly SeasonLog[];
  };
  const aircraft = demoAircraft(io);
  for (const log of season.logs) {
    const fitted = withPropeller(aircraft, log.propeller);
    const checked = checkLogOfSeason(io, log, fitted);
    const name = `${log.file.replace(/\.csv$/, "")}.html`;
    const { facts, budget } = fitted;
    const html = flightReport({ checked, facts, budget, release: releaseOf(io) });
    writeReport(io, resolve(io.workFolder, folder, name), html, call.has("force"));
    talk.data(demoSentences.line(name, headlines(checked), noticeCount(checked.check.log.notices)));
    await io.pause();
  }
  const first = season.logs[0]?.file.replace(/\.csv$/, ".html") ?? "";
  talk.data(demoSentences.done(season.logs.length, folder, join(folder, first)));
  talk.data(
    `Next: ${commandLine(["check", seasonFile(io, "flight-09.csv"), "--aircraft", seasonFile(io, "aircraft.json")])}`,
  );
  return EXIT.done;
}

/** A file of the season as it must be typed here. */
function seasonFile(io: Io, name: string): string {
  const path = join(io.packageFolder, SEASON, name);
  const below = relative(io.workFolder, path);
  return below.startsWith("..") ? path : below;
}

function demoAircraft(io: Io): Aircraft {
  const name = join(SEASON, "aircraft.json");
  const parsed = parseAircraftFile(packageText(io, name), name);
  if (parsed.state !== "read") throw new Failure(EXIT.bug, inputSentences.packageIncomplete(name));
  return { ...parsed, name: parsed.facts.name };
}

/** The aircraft as flown that day: "18x8" is 18 inches across and 8 inches of pitch. */
function withPropeller(aircraft: Aircraft, propeller: string): Aircraft {
  const [diameterIn = null, pitchIn = null] = propeller.split("x").map(Number);
  const { facts } = aircraft;
  return { ...aircraft, facts: { ...facts, propeller: { ...facts.propeller, diameterIn, pitchIn } } };
}

function checkLogOfSeason(io: Io, log: SeasonLog, aircraft: Aircraft): CheckedLogWithRows {
  const name = join(SEASON, log.file);
  const bytes = io.files.read(join(io.packageFolder, name));
  if (bytes === null) throw new Failure(EXIT.bug, inputSentences.packageIncomplete(name));
  const checked = checkBytes(log.file, bytes, {
    aircraft,
    options: NO_ANSWERS,
    day: { ambientC: log.ambientC, startPct: null },
  });
  const { notices } = checked.check.log;
  if (exitOfNotices(notices) === EXIT.done) return checked;
  throw new Failure(EXIT.bug, inputSentences.ownBug(`${name}: ${notices.map(({ text }) => text).join(" ")}`));
}

function headlines({ check }: CheckedLogWithRows): string {
  return check.flights.map(({ headline }) => headline).join(" ");
}
