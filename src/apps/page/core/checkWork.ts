import { withRememberedReading } from "../../../aircraft/index.ts";
import { type CheckedLogWithRows, checkLog, type FlightCheck } from "../../../flight/check/index.ts";
import { type ReadingOptions, readLog } from "../../../log/reading/index.ts";
import { keptReading, readingToRemember } from "../../../season/logbook/index.ts";
import { flightReport } from "../../../show/report/index.ts";
import { type Answers, type CheckAnswer, type CheckWork, NO_ANSWERS } from "../messages.ts";
import { type Aircraft, aircraftOf } from "./readAircraft.ts";
import { readingOptionsOf } from "./readingOptionsOf.ts";

/**
 * Checks one log as the command does and writes its report. `sha256` is the hex digest of the bytes; `tell` hears
 * how far it has come.
 */
export function checkWork(
  work: CheckWork,
  sha256: string,
  release: string,
  tell: (share: number, words: string) => void,
): CheckAnswer {
  tell(0.1, "being read");
  const aircraft = aircraftOf(work.aircraft);
  const bytes = new Uint8Array(work.bytes);
  const once = (answers: Answers) => checkOnce(bytes, work.file, sha256, aircraft, readingOptionsOf(answers));
  const first = once(work.answers ?? NO_ANSWERS);
  const known = work.answers === null ? rememberedOf(work, first) : null;
  const checked = known === null ? first : once(known);
  const options = readingOptionsOf(known ?? work.answers ?? NO_ANSWERS);
  const { facts, budget } = aircraft;
  tell(0.7, "its report is being written");
  return {
    kind: "check",
    check: checked.check,
    report: flightReport({ checked, facts, budget, release }),
    ...shownColumns(bytes, checked, options, aircraft),
    isRemembered: known !== null,
    aircraftToKeep: withAnswers(work, checked.check, options, aircraft),
  };
}

/** The aircraft file with what was answered about a log that could be read; null when there is nothing new to keep. */
function withAnswers(
  { aircraft: text, answers }: CheckWork,
  { log, flights }: FlightCheck,
  options: ReadingOptions,
  { readings }: Aircraft,
): string | null {
  if (text === null || answers === null || log.headerSignature === null || flights.length === 0) return null;
  const reading = readingToRemember(log.headerSignature, readings, keptReading(options));
  if (reading === null) return null;
  const kept = withRememberedReading(text, reading);
  return kept === text ? null : kept;
}

function checkOnce(
  bytes: Uint8Array,
  file: string,
  sha256: string,
  { name, facts, budget, readings }: Aircraft,
  options: ReadingOptions,
): CheckedLogWithRows {
  const day = { ambientC: null, startPct: null };
  return checkLog(bytes, { file, sha256, aircraft: name, facts, budget, readings, options, day });
}

function rememberedOf({ remembered }: CheckWork, { check }: CheckedLogWithRows): Answers | null {
  const signature = check.log.headerSignature;
  return signature !== null && Object.hasOwn(remembered, signature) ? (remembered[signature] ?? null) : null;
}

/** Every column with its reason, also those left alone; and the first rows where a question is asked. */
function shownColumns(
  bytes: Uint8Array,
  { readLog: read }: CheckedLogWithRows,
  options: ReadingOptions,
  { facts, readings }: Aircraft,
): Pick<CheckAnswer, "columns" | "preview"> {
  if (read !== null) return { columns: read.columns, preview: [] };
  const cells = options.cells ?? facts.pack.cells;
  const outcome = readLog(bytes, { ...options, cells }, readings);
  return outcome.state === "read"
    ? { columns: outcome.log.columns, preview: [] }
    : { columns: outcome.columns, preview: outcome.preview };
}
