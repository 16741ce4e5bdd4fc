import { resolve } from "node:path";
import type { FlightCheck } from "../../flight/check/index.ts";
import { type AircraftInput, readAircraft, withCells } from "./aircraftOption.ts";
import type { JobResult } from "./checkJob.ts";
import { type CheckWork, jobAhead, outcomeOf } from "./checkLogFile.ts";
import type { CheckSetting } from "./checkOne.ts";
import type { CheckThreads } from "./checkThreads.ts";
import type { Call } from "./commandDefinition.ts";
import { type ExitCode, exitOfSeveral } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { givenNumber } from "./knownNumbers.ts";
import { STANDARD_INPUT } from "./logInput.ts";
import { oneLine } from "./printable.ts";
import { readingOptions } from "./readingOptions.ts";
import { releaseOf } from "./release.ts";
import { reportPaths } from "./reportPaths.ts";
import { usageSentences } from "./sentences.ts";
import type { Talk } from "./talk.ts";

/** Every log of one call, each with its own result. */
export async function checkLogs(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  refuseReportAsLog(call, io);
  const options = readingOptions(call);
  const reports = reportPaths(call.text("report"), distinctLogs(call.operands));
  const work: CheckWork = {
    call,
    io,
    talk,
    setting: { options, day: dayOf(call) },
    reports,
    release: reports === null ? null : releaseOf(io),
    aircraft: withCells(await readAircraft(call.text("aircraft"), io), options.cells),
  };
  tellAircraftProblems(work.aircraft, talk);
  const threads = await threadsFor(call.operands.length, io);
  try {
    const outcomes = await outcomesOf(work, threads);
    if (call.has("json")) talk.data(jsonOf(outcomes.map(({ check }) => check)));
    return exitOfSeveral(outcomes.map(({ exit }) => exit));
  } finally {
    threads?.end();
  }
}

/** Loaded only for several logs. */
async function threadsFor(logs: number, { checkWorker }: Io): Promise<CheckThreads | null> {
  if (logs < 2 || checkWorker === undefined) return null;
  return (await import("./checkThreads.ts")).checkThreads(checkWorker, logs);
}

/** Told in the order of the logs; the threads work some logs ahead. */
async function outcomesOf(work: CheckWork, threads: CheckThreads | null): Promise<Outcome[]> {
  const { operands } = work.call;
  const outcomes: Outcome[] = [];
  const begun: (Promise<JobResult> | null)[] = [];
  for (const [at, log] of operands.entries()) {
    const ahead = threads === null ? 0 : Math.min(operands.length, at + threads.jobsAtOnce);
    while (begun.length < ahead) begun.push(jobAhead(operands[begun.length]!, work, threads!));
    outcomes.push(await outcomeOf(log, work, begun[at] ?? null));
    begun[at] = null;
    await work.io.pause();
  }
  return outcomes;
}

type Outcome = Awaited<ReturnType<typeof outcomeOf>>;

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
