import type { AddedLog, CurrentCalibration } from "../../../season/logbook/index.ts";
import { checkSummary } from "../checkSummary.ts";
import type { Call } from "../commandDefinition.ts";
import { shownLog } from "../logInput.ts";
import { inOrder, noticeLines } from "../noticeLines.ts";
import { commandLine } from "../shellWord.ts";
import type { AddWork } from "./addLogOf.ts";
import { bookWords } from "./bookWords.ts";
import { wordsOfFacts } from "./givenOptions.ts";
import { logbookSentences } from "./sentences.ts";

/** Notices on standard error; on standard output what was added, with one log its main numbers too. */
export function tellAdded(log: string, added: AddedLog, call: Call, { talk, book }: AddWork): void {
  const { outcome, check, aircraft } = added;
  const retry = (option: string): string =>
    commandLine([call.name, log, ...call.optionWords, ...option.split(" ")]);
  const notices = outcome.state === "stopped" ? outcome.notices : (check?.log.notices ?? []);
  for (const notice of inOrder(notices)) talk.say(noticeLines(shownLog(log), notice, retry).join("\n"));
  if (outcome.state === "already" && Object.keys(added.unused).length > 0) {
    // One time for several flights is no flight's own: which one it was only the pilot knows.
    const flights = "flownS" in added.unused && outcome.flights.length > 1 ? ["FLIGHT"] : outcome.flights;
    const words = ["edit", ...flights, ...wordsOfFacts(added.unused), ...bookWords(call)];
    talk.say(logbookSentences.factsNotTaken(commandLine(words)));
  }
  if (outcome.state === "stopped" || call.has("json")) return;
  if (outcome.state === "already") {
    talk.data(logbookSentences.already(shownLog(log), outcome.flights));
    return;
  }
  talk.data(logbookSentences.added(outcome.flights, aircraft ?? "", shownLog(log), book.isDry));
  if (call.operands.length > 1 || check === null) return;
  const next = commandLine(["timer", ...bookWords(call)]);
  talk.data(checkSummary(shownLog(log), check, { report: null, next }).slice(1).join("\n"));
}

/** The result of `add --json`. */
export function addedJson(
  logs: readonly AddedLog[],
  dryRun: boolean,
  calibration: CurrentCalibration | null,
): object {
  return {
    format: "tallywatt/add",
    version: 1,
    dryRun,
    logs: logs.map(({ file, sha256, aircraft, outcome, check }) => ({
      file,
      sha256,
      aircraft,
      state: outcome.state,
      flights: outcome.state === "stopped" ? [] : outcome.flights,
      notices: outcome.state === "stopped" ? outcome.notices : (check?.log.notices ?? []),
    })),
    calibration,
  };
}
