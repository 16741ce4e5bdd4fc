import { resolve } from "node:path";
import type { FlightCheck } from "../../flight/check/index.ts";
import { type AircraftInput, readAircraft, withCells } from "./aircraftOption.ts";
import { type CheckWork, outcomeOf } from "./checkLogFile.ts";
import type { CheckSetting } from "./checkOne.ts";
import type { Call } from "./commandDefinition.ts";
import { type ExitCode, exitOfSeveral } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { givenNumber } from "./knownNumbers.ts";
import { STANDARD_INPUT } from "./logInput.ts";
import { oneLine } from "./printable.ts";
import { readingOptions } from "./readingOptions.ts";
import { reportPaths } from "./reportPaths.ts";
import { usageSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";

/** Every log of one call, each with its own result. */
export async function checkLogs(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  refuseReportAsLog(call, io);
  const options = readingOptions(call);
  const work: CheckWork = {
    call,
    io,
    talk,
    setting: { options, day: dayOf(call) },
    reports: reportPaths(call.text("report"), distinctLogs(call.operands)),
    aircraft: withCells(await readAircraft(call.text("aircraft"), io), options.cells),
  };
  tellAircraftProblems(work.aircraft, talk);
  const checks: FlightCheck[] = [];
  const exits: ExitCode[] = [];
  for (const log of call.operands) {
    const { check, exit } = await outcomeOf(log, work);
    checks.push(check);
    exits.push(exit);
    await io.pause();
  }
  if (call.has("json")) talk.data(jsonOf(checks));
  return exitOfSeveral(exits);
}

/** Once, however many logs there are; the sentences name the file. */
function tellAircraftProblems(aircraft: AircraftInput, talk: Talk): void {
  if (aircraft.state !== "unusable") return;
  for (const { text } of aircraft.notices) talk.say(oneLine(text));
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
    ambientC: givenNumber(call, "ambient", "ambientC"),
    startPct: givenNumber(call, "start-pct", "startPct"),
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
