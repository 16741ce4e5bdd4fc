import { resolve } from "node:path";
import type { CheckedLogWithRows, FlightCheck } from "../../flight/check/index.ts";
import type { AircraftInput } from "./aircraftOption.ts";
import { type CheckSetting, checkBytes, notOpened } from "./checkOne.ts";
import type { Call } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { tellError } from "./failure.ts";
import type { Io } from "./io.ts";
import { logName, openLogBytes } from "./logInput.ts";
import { exitOfNotices } from "./noticeLines.ts";
import { releaseOf } from "./release.ts";
import { inputSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";
import { tellNotices, tellSummary } from "./tellCheck.ts";
import { writeReport } from "./writeOutput.ts";

/** What is the same for every log of one call. */
export interface CheckWork {
  readonly call: Call;
  readonly io: Io;
  readonly talk: Talk;
  readonly aircraft: AircraftInput;
  readonly setting: Omit<CheckSetting, "aircraft">;
  /** Where each log's report goes; null without --report. */
  readonly reports: ReadonlyMap<string, string> | null;
}

interface Checked {
  readonly check: FlightCheck;
  readonly exit: ExitCode;
  /** Null for a log that was not opened. */
  readonly rows: CheckedLogWithRows | null;
}

/** One log's way through the command: read, checked, told, reported. */
export async function outcomeOf(log: string, work: CheckWork): Promise<Omit<Checked, "rows">> {
  const { talk, call, aircraft } = work;
  const { check, exit, rows } = await checkedOrWhy(log, work);
  if (aircraft.state === "read") tellNotices(log, check, call, talk);
  if (exit !== EXIT.done) return { check, exit };
  const written = await reportOf(log, rows, work);
  tellSummary(log, check, written.path, call, talk);
  return { check, exit: written.exit };
}

async function checkedOrWhy(log: string, work: CheckWork): Promise<Checked> {
  const { io, talk, aircraft, setting } = work;
  const file = logName(log);
  if (aircraft.state === "unusable") return stopped(notOpened(file, null, aircraft.notices));
  const { name } = aircraft.aircraft;
  const input = await openLogBytes(log, io, talk);
  if (input.state === "unusable") {
    const { code, text } = input;
    return stopped(notOpened(file, name, [{ code, severity: "refusal", text }]));
  }
  try {
    const rows = checkBytes(file, input.bytes, { ...setting, aircraft: aircraft.aircraft });
    return { check: rows.check, exit: exitOfNotices(rows.check.log.notices), rows };
  } catch (error) {
    return ownBug(file, name, error, work);
  }
}

function stopped(check: FlightCheck): Checked {
  return { check, exit: exitOfNotices(check.log.notices), rows: null };
}

/** Other logs still get their result when one meets a fault of ours. */
function ownBug(file: string, aircraft: string | null, error: unknown, { call, talk }: CheckWork): Checked {
  const text = inputSentences.ownBug(error instanceof Error ? error.message : String(error));
  if (call.has("debug") && error instanceof Error) talk.say(error.stack ?? "");
  const check = notOpened(file, aircraft, [{ code: "own-fault", severity: "refusal", text }]);
  return { check, exit: EXIT.bug, rows: null };
}

/** A report that fails must not cost the result, nor the other logs theirs. */
async function reportOf(
  log: string,
  rows: CheckedLogWithRows | null,
  { reports, aircraft, io, call, talk }: CheckWork,
): Promise<{ readonly path: string | null; readonly exit: ExitCode }> {
  const path = reports?.get(log);
  if (path === undefined || rows === null || aircraft.state !== "read")
    return { path: null, exit: EXIT.done };
  const { facts, budget } = aircraft.aircraft;
  try {
    const { flightReport } = await import("../../show/report/index.ts");
    const html = flightReport({ checked: rows, facts, budget, release: releaseOf(io) });
    writeReport(io, resolve(io.workFolder, path), html, call.has("force"));
    return { path, exit: EXIT.done };
  } catch (error) {
    return { path: null, exit: tellError(error, talk, call.has("debug")) };
  }
}
