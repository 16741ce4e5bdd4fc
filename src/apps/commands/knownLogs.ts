import {
  type KnownParts,
  knownFromBelieved,
  type NamedFlight,
  runInLog,
} from "../../flight/prediction/index.ts";
import type { ReadingOptions } from "../../log/reading/index.ts";
import { type Aircraft, readAircraft, withCells } from "./aircraftOption.ts";
import { checkBytes, notOpened } from "./checkOne.ts";
import type { Call } from "./commandDefinition.ts";
import { EXIT, type ExitCode, exitOfSeveral } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { logName, readLogBytes, STANDARD_INPUT, shownLog } from "./logInput.ts";
import { exitOfNotices, noticeLines } from "./noticeLines.ts";
import { planSentences } from "./planSentences.ts";
import { usageSentences } from "./sentences.ts";
import { answeredWords, commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";
import { tellEach } from "./tellCheck.ts";

/** The aircraft and what its logs say about the parts. */
export type KnownOrExit =
  | { readonly aircraft: Aircraft; readonly known: KnownParts; readonly flights: number; readonly exit: null }
  | { readonly exit: ExitCode };

/**
 * Reads the aircraft file and every --log of a command; the logs are taken as flown with what the file describes.
 * An input that cannot be used, or a question, is told and ends the command.
 */
export async function knownFromLogs(
  call: Call,
  io: Io,
  talk: Talk,
  options: ReadingOptions,
): Promise<KnownOrExit> {
  const file = call.text("aircraft");
  if (file === null) throw usageFailure(planSentences.aircraftMissing(call.name));
  const input = withCells(await readAircraft(file, io), options.cells);
  if (input.state === "unusable") {
    for (const notice of input.notices) talk.say(noticeLines(file, notice, () => "").join("\n"));
    return { exit: EXIT.unusable };
  }
  const flights: NamedFlight[] = [];
  const exits: ExitCode[] = [];
  for (const log of distinctLogs(call.texts("log"))) {
    const read = await flightsOf(log, call, io, talk, options, input.aircraft);
    flights.push(...read.flights);
    exits.push(read.exit);
    await io.pause();
  }
  const exit = exitOfSeveral(exits);
  if (exit !== EXIT.done) return { exit };
  return knownOf(input.aircraft, flights);
}

/** @param flights those that are believed count */
export function knownOf(aircraft: Aircraft, flights: readonly NamedFlight[]): KnownOrExit {
  const known = knownFromBelieved(flights);
  return { aircraft, known, flights: flights.length - known.leftOut.length, exit: null };
}

/** A log given twice would count twice. */
function distinctLogs(logs: readonly string[]): readonly string[] {
  const twice = logs.find((log, index) => logs.indexOf(log) < index);
  if (twice === STANDARD_INPUT) throw usageFailure(usageSentences.inputTwice());
  if (twice !== undefined) throw usageFailure(usageSentences.logTwice(twice));
  return logs;
}

async function flightsOf(
  log: string,
  call: Call,
  io: Io,
  talk: Talk,
  options: ReadingOptions,
  aircraft: Aircraft,
): Promise<{ readonly flights: readonly NamedFlight[]; readonly exit: ExitCode }> {
  const input = await readLogBytes(log, io, talk);
  const day = { ambientC: null, startPct: null };
  const check =
    input.state === "bytes"
      ? checkBytes(logName(log), input.bytes, { aircraft, options, day }).check
      : notOpened(logName(log), aircraft.name, [{ code: input.code, severity: "refusal", text: input.text }]);
  const retry = (option: string) => commandLine([call.name, ...answeredWords(call.optionWords, option)]);
  const { notices } = check.log;
  const told = notices.filter(({ severity }) => severity !== "note");
  tellEach(shownLog(log), told, retry, talk);
  const exit = exitOfNotices(notices);
  if (exit === EXIT.done && check.flights.length === 0) talk.say(planSentences.noFlights(shownLog(log)));
  const { facts } = aircraft;
  return {
    flights: check.flights.map((flight, index) => ({
      ...flight,
      facts,
      name: runInLog(logName(log), index, check.flights.length),
    })),
    exit,
  };
}
