import type { Notice } from "../../base/notices/index.ts";
import type { FlightCheck } from "../../flight/check/index.ts";
import { checkSummary } from "./checkSummary.ts";
import type { Call } from "./commandDefinition.ts";
import { STANDARD_INPUT, shownLog } from "./logInput.ts";
import { inOrder, noticeLines } from "./noticeLines.ts";
import { answeredWords, commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";

/** Every notice on standard error, the gravest first. */
export function tellNotices(log: string, check: FlightCheck, call: Call, talk: Talk): void {
  const retry = (option: string): string =>
    commandLine([call.name, log, ...answeredWords(call.optionWords, option)]);
  tellEach(shownLog(log), check.log.notices, retry, talk);
}

/** A line to try is printed once, under the gravest notice that offers it. */
export function tellEach(
  log: string,
  notices: readonly Notice[],
  retry: (option: string) => string,
  talk: Talk,
): void {
  const tried = new Set<string>();
  for (const notice of inOrder(notices)) {
    const options = (notice.options ?? []).filter((option) => !tried.has(option));
    const lines = noticeLines(log, { ...notice, options }, retry);
    for (const option of options) tried.add(option);
    talk.say(lines.join("\n"));
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

/** First an aircraft to judge by, then the report; after the report the next flight's place, the logbook. */
function nextCommand(log: string, report: string | null, call: Call): string {
  if (!call.has("aircraft")) return commandLine(["new", "aircraft.json"]);
  if (log === STANDARD_INPUT) return commandLine(["plan", "--aircraft", call.text("aircraft") ?? ""]);
  if (report !== null) return commandLine(["add", log, "--aircraft", call.text("aircraft") ?? ""]);
  return commandLine(["check", log, ...call.optionWords, ...(call.has("report") ? [] : ["--report"])]);
}
