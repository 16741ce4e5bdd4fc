import { resolve } from "node:path";
import type { FlightCheck } from "../../flight/check/index.ts";
import type { LogBytes } from "../../log/reading/index.ts";
import type { Aircraft, AircraftInput } from "./aircraftOption.ts";
import { checkedJob, type JobReport, type JobResult } from "./checkJob.ts";
import { type CheckSetting, notOpened } from "./checkOne.ts";
import type { CheckThreads } from "./checkThreads.ts";
import type { Call } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { tellError } from "./failure.ts";
import type { Io } from "./io.ts";
import { bytesAhead, logName, openLogBytes } from "./logInput.ts";
import { exitOfNotices } from "./noticeLines.ts";
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
  /** The release that reports name; null without --report. */
  readonly release: string | null;
}

interface Checked {
  readonly check: FlightCheck;
  readonly exit: ExitCode;
  /** Null for a log without one. */
  readonly report: JobReport | null;
}

/** One log's way through the command: read, checked, told, reported. `begun` is its job where that began ahead. */
export async function outcomeOf(
  log: string,
  work: CheckWork,
  begun: Promise<JobResult> | null,
): Promise<Omit<Checked, "report">> {
  const { talk, call, aircraft } = work;
  const { check, exit, report } = await checkedOrWhy(log, work, begun);
  if (aircraft.state === "read") tellNotices(log, check, call, talk);
  if (exit !== EXIT.done) return { check, exit };
  const written = writtenReport(log, report, work);
  tellSummary(log, check, written.path, call, talk);
  return { check, exit: written.exit };
}

/** The job of a log, begun on another thread before its turn; null where it must wait for that. */
export function jobAhead(log: string, work: CheckWork, threads: CheckThreads): Promise<JobResult> | null {
  const { aircraft, io } = work;
  const bytes = aircraft.state === "read" ? bytesAhead(log, io) : null;
  return bytes === null || aircraft.state !== "read"
    ? null
    : threads.run(jobOf(log, bytes, aircraft.aircraft, work));
}

function jobOf(log: string, bytes: LogBytes, aircraft: Aircraft, { setting, reports, release }: CheckWork) {
  const isReported = reports?.has(log) === true;
  return {
    file: logName(log),
    bytes,
    setting: { ...setting, aircraft },
    release: isReported ? release : null,
  };
}

async function checkedOrWhy(
  log: string,
  work: CheckWork,
  begun: Promise<JobResult> | null,
): Promise<Checked> {
  const { io, talk, aircraft } = work;
  const file = logName(log);
  if (aircraft.state === "unusable") return stopped(notOpened(file, null, aircraft.notices));
  const { name } = aircraft.aircraft;
  if (begun !== null) return checkedBy(await begun, file, name, work);
  const input = await openLogBytes(log, io, talk);
  if (input.state === "unusable") {
    const { code, text } = input;
    return stopped(notOpened(file, name, [{ code, severity: "refusal", text }]));
  }
  return checkedBy(await checkedJob(jobOf(log, input.bytes, aircraft.aircraft, work)), file, name, work);
}

function checkedBy(result: JobResult, file: string, aircraft: string | null, work: CheckWork): Checked {
  if (result.state === "failed") return ownBug(file, aircraft, result.error, work);
  const { check, report } = result;
  return { check, exit: exitOfNotices(check.log.notices), report };
}

function stopped(check: FlightCheck): Checked {
  return { check, exit: exitOfNotices(check.log.notices), report: null };
}

/** Other logs still get their result when one meets a fault of ours. */
function ownBug(file: string, aircraft: string | null, error: unknown, { call, talk }: CheckWork): Checked {
  const text = inputSentences.ownBug(error instanceof Error ? error.message : String(error));
  if (call.has("debug") && error instanceof Error) talk.say(error.stack ?? "");
  const check = notOpened(file, aircraft, [{ code: "own-fault", severity: "refusal", text }]);
  return { check, exit: EXIT.bug, report: null };
}

/** A report that fails must not cost the result, nor the other logs theirs. */
function writtenReport(
  log: string,
  report: JobReport | null,
  { reports, io, call, talk }: CheckWork,
): { readonly path: string | null; readonly exit: ExitCode } {
  const path = reports?.get(log);
  if (path === undefined || report === null) return { path: null, exit: EXIT.done };
  try {
    if ("error" in report) throw report.error;
    writeReport(io, resolve(io.workFolder, path), report.html, call.has("force"));
    return { path, exit: EXIT.done };
  } catch (error) {
    return { path: null, exit: tellError(error, talk, call.has("debug")) };
  }
}
