import { resolve } from "node:path";
import type { CheckedLogWithRows, FlightCheck } from "../../flight/check/index.ts";
import { type AircraftInput, readAircraft } from "./aircraftOption.ts";
import { type CheckSetting, checkBytes, notOpened } from "./checkOne.ts";
import { checkSummary } from "./checkSummary.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode, exitOfSeveral } from "./exitCodes.ts";
import { Failure, usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { logName, readLogBytes, STANDARD_INPUT, shownLog } from "./logInput.ts";
import { exitOfNotices, inOrder, noticeLines } from "./noticeLines.ts";
import { numberOption } from "./optionValues.ts";
import { READING_OPTIONS, readingOptions } from "./readingOptions.ts";
import { releaseOf } from "./release.ts";
import { reportPaths } from "./reportPaths.ts";
import { inputSentences, usageSentences } from "./sentences.ts";
import { commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";
import { writeReport } from "./writeOutput.ts";

export const command: CommandDefinition = {
  operands: "<LOG...>",
  about: "what one log says, held against the plan and the limits",
  examples: [
    { line: "tallywatt check flight.csv", about: "needs no option on a good log" },
    {
      line: "tallywatt check flight.csv --aircraft tern.json --report",
      about: "writes flight.html beside the log",
    },
    {
      line: "tallywatt check one.csv two.csv --aircraft tern.json --report=reports",
      about: "a report each, in a folder",
    },
    { line: "tallywatt check - --json < flight.csv", about: "reads standard input, prints JSON" },
  ],
  options: [
    { flags: "--aircraft <FILE>", help: "aircraft file: what is fitted and what was planned" },
    { flags: "--ambient <C>", help: "air temperature of the day, degrees Celsius" },
    { flags: "--start-pct <N>", help: "state of charge at the start, percent" },
    { flags: "--report [FILE.html]", help: "write the report beside the log, or where = says" },
    { flags: "--force", help: "replace a file that tallywatt did not write" },
    { flags: "--json", help: "the result as JSON on standard output, nothing else" },
    ...READING_OPTIONS,
  ],
  notes: [
    "LOG is a CSV file, or - for standard input. Channels for --column and --unit: tallywatt columns LOG",
  ],
  run,
};

/** One log's way through the command. */
interface Outcome {
  readonly check: FlightCheck;
  readonly exit: ExitCode;
}

interface Work {
  readonly call: Call;
  readonly io: Io;
  readonly talk: Talk;
  readonly aircraft: AircraftInput;
  readonly setting: Omit<CheckSetting, "aircraft">;
  readonly reports: ReadonlyMap<string, string> | null;
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  refuseReportAsLog(call, io);
  const work: Work = {
    call,
    io,
    talk,
    setting: { options: readingOptions(call), day: dayOf(call) },
    reports: reportPaths(call.text("report"), distinctLogs(call.operands)),
    aircraft: readAircraft(call.text("aircraft"), io),
  };
  const outcomes: Outcome[] = [];
  for (const log of call.operands) {
    outcomes.push(await outcomeOf(log, work));
    await io.pause();
  }
  if (call.has("json")) talk.data(jsonOf(outcomes.map(({ check }) => check)));
  return exitOfSeveral(outcomes.map(({ exit }) => exit));
}

/** "--report out.html" without "=": the page would be taken for a log that does not exist. */
function refuseReportAsLog(call: Call, io: Io): void {
  if (call.text("report") !== "") return;
  const page = call.operands.find(
    (log) => log.endsWith(".html") && io.files.size(resolve(io.workFolder, log)) === null,
  );
  if (page !== undefined) throw usageFailure(usageSentences.reportNeedsEquals(page));
}

function dayOf(call: Call): CheckSetting["day"] {
  return {
    ambientC: numberOption(call, "ambient", { low: -40, high: 60, unit: "degrees Celsius", example: "24" }),
    startPct: numberOption(call, "start-pct", { low: 1, high: 100, unit: "percent", example: "90" }),
  };
}

function distinctLogs(logs: readonly string[]): readonly string[] {
  const twice = logs.find((log, index) => logs.indexOf(log) < index);
  if (twice === STANDARD_INPUT) throw usageFailure(usageSentences.inputTwice());
  if (twice !== undefined) throw usageFailure(usageSentences.logTwice(twice));
  return logs;
}

function jsonOf(checks: readonly FlightCheck[]): string {
  const only = checks.length === 1 ? checks[0] : undefined;
  return JSON.stringify(only ?? { format: "tallywatt/flight-checks", version: 1, checks }, null, 2);
}

async function outcomeOf(log: string, work: Work): Promise<Outcome> {
  const { talk, call } = work;
  const checked = await checkedOrWhy(log, work);
  const { check } = checked;
  tellNotices(log, check, work);
  if (checked.exit !== EXIT.done) return checked;
  const written = await reportOf(log, checked.rows, work);
  if (call.has("json") && written.path !== null) talk.say(`Report: ${written.path}`);
  if (!call.has("json")) tellSummary(talk, summaryOf(log, check, written.path, call));
  return { check, exit: written.exit };
}

async function checkedOrWhy(
  log: string,
  work: Work,
): Promise<Outcome & { readonly rows: CheckedLogWithRows | null }> {
  const { io, talk, aircraft, setting } = work;
  if (aircraft.state === "unusable") return stopped(notOpened(logName(log), null, aircraft.notices));
  const input = await readLogBytes(log, io, talk);
  if (input.state === "unusable") {
    const { code, text } = input;
    return stopped(notOpened(logName(log), aircraft.aircraft.name, [{ code, severity: "refusal", text }]));
  }
  try {
    const rows = checkBytes(logName(log), input.bytes, { ...setting, aircraft: aircraft.aircraft });
    return { check: rows.check, exit: exitOfNotices(rows.check.log.notices), rows };
  } catch (error) {
    return ownBug(log, aircraft.aircraft.name, error, work);
  }
}

function stopped(check: FlightCheck): Outcome & { readonly rows: null } {
  return { check, exit: exitOfNotices(check.log.notices), rows: null };
}

/** Other logs still get their result when one meets a fault of ours. */
function ownBug(log: string, aircraft: string | null, error: unknown, { call, talk }: Work) {
  const text = inputSentences.ownBug(error instanceof Error ? error.message : String(error));
  if (call.has("debug") && error instanceof Error) talk.say(error.stack ?? "");
  const check = notOpened(logName(log), aircraft, [{ code: "own-fault", severity: "refusal", text }]);
  return { check, exit: EXIT.bug, rows: null };
}

function tellNotices(log: string, check: FlightCheck, { call, talk }: Work): void {
  const retry = (option: string): string =>
    commandLine([call.name, log, ...call.optionWords, ...option.split(" ")]);
  for (const notice of inOrder(check.log.notices))
    talk.say(noticeLines(shownLog(log), notice, retry).join("\n"));
}

async function reportOf(
  log: string,
  rows: CheckedLogWithRows | null,
  work: Work,
): Promise<{ readonly path: string | null; readonly exit: ExitCode }> {
  const path = work.reports?.get(log);
  if (path === undefined || rows === null || work.aircraft.state !== "read")
    return { path: null, exit: EXIT.done };
  const { facts, budget } = work.aircraft.aircraft;
  try {
    const { flightReport } = await import("../../show/report/index.ts");
    const html = flightReport({ checked: rows, facts, budget, release: releaseOf(work.io) });
    writeReport(work.io, resolve(work.io.workFolder, path), html, work.call.has("force"));
    return { path, exit: EXIT.done };
  } catch (error) {
    return { path: null, exit: tellFailure(error, work) };
  }
}

/** A report that fails must not cost the result, nor the other logs theirs. */
function tellFailure(error: unknown, { call, talk }: Work): ExitCode {
  const isOurs = !(error instanceof Failure);
  const message = error instanceof Error ? error.message : String(error);
  talk.say(isOurs ? inputSentences.ownBug(message) : message);
  if (call.has("debug") && error instanceof Error) talk.say(error.stack ?? "");
  return isOurs ? EXIT.bug : error.exit;
}

function summaryOf(log: string, check: FlightCheck, report: string | null, call: Call): readonly string[] {
  return checkSummary(shownLog(log), check, { report, next: nextCommand(log, report, call) });
}

/** First an aircraft to judge by, then the report, then how the columns were read. */
function nextCommand(log: string, report: string | null, call: Call): string {
  if (!call.has("aircraft")) return commandLine(["new", "aircraft.json"]);
  if (report !== null || log === STANDARD_INPUT) return commandLine(["columns", log]);
  return commandLine(["check", log, ...call.optionWords, "--report"]);
}

function tellSummary(talk: Talk, lines: readonly string[]): void {
  const [first, headline, ...rest] = lines;
  if (first !== undefined) talk.data(first);
  if (headline !== undefined) talk.boldData(headline);
  if (rest.length > 0) talk.data(rest.join("\n"));
}
