import type { Notice } from "../../../base/notices/index.ts";
import type { Call } from "../commandDefinition.ts";
import type { ExitCode } from "../exitCodes.ts";
import { exitOfNotices, inOrder, noticeLines } from "../noticeLines.ts";
import { commandLine } from "../shellWord.ts";
import type { Talk } from "../talk.ts";

/** Says why no aircraft of the book was chosen, each with the command line that settles it; gives the exit. */
export function tellStopped(call: Call, where: string, notices: readonly Notice[], talk: Talk): ExitCode {
  const retry = (option: string): string =>
    commandLine([call.name, ...call.optionWords, ...option.split(/ (.*)/, 2)]);
  for (const notice of inOrder(notices)) talk.say(noticeLines(where, notice, retry).join("\n"));
  return exitOfNotices(notices);
}
