import type { FlightCheck } from "../../flight/check/index.ts";
import { checkSummary } from "./checkSummary.ts";
import type { Call } from "./commandDefinition.ts";
import { STANDARD_INPUT, shownLog } from "./logInput.ts";
import { inOrder, noticeLines } from "./noticeLines.ts";
import { commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";

/** Every notice on standard error, the gravest first. */
export function tellNotices(log: string, check: FlightCheck, call: Call, talk: Talk): void {
  const retry = (option: string): string =>
    commandLine([call.name, log, ...call.optionWords, ...option.split(" ")]);
  for (const notice of inOrder(check.log.notices)) {
    talk.say(noticeLines(shownLog(log), notice, retry).join("\n"));
  }
}

/** The summary on standard output, its headline in bold; with --json only where the report is, as talk. */
export function tellSummary(
  log: string,
  check: FlightCheck,
  report: string | null,
  call: Call,
  talk: Talk,
): void {
  if (call.has("json")) {
    if (report !== null) talk.say(`Report: ${report}`);
    return;
  }
  const end = { report, next: nextCommand(log, report, call) };
  const [first = "", headline = "", ...rest] = checkSummary(shownLog(log), check, end);
  talk.data(first);
  talk.boldData(headline);
  talk.data(rest.join("\n"));
}

/** First an aircraft to judge by, then the report, then how the columns were read. */
function nextCommand(log: string, report: string | null, call: Call): string {
  if (!call.has("aircraft")) return commandLine(["new", "aircraft.json"]);
  if (report !== null || log === STANDARD_INPUT) return commandLine(["columns", log]);
  return commandLine(["check", log, ...call.optionWords, "--report"]);
}
