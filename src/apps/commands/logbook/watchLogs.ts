import { resolve } from "node:path";
import type { Call } from "../commandDefinition.ts";
import { EXIT, type ExitCode } from "../exitCodes.ts";
import { usageFailure } from "../failure.ts";
import type { Io } from "../io.ts";
import type { AddWork } from "./addLogOf.ts";
import { addOrWhy } from "./addLogs.ts";
import { logsInFolder } from "./logsOfCall.ts";
import { logbookSentences } from "./sentences.ts";
import { watchFolder } from "./watchFolder.ts";

/** How often a watched folder is looked at. */
const LOOK_EVERY_MS = 1000;

/** Adds the logs of a folder as they come, until the user ends it. */
export async function watchLogs(folder: string, call: Call, work: AddWork): Promise<ExitCode> {
  const { io, talk } = work;
  const sole = (["flown", "put-back", "json"] as const).find((option) => call.has(option));
  if (sole !== undefined) throw usageFailure(logbookSentences.notWithWatch(`--${sole}`));
  if (logsInFolder(folder, io) === null) throw usageFailure(logbookSentences.notAFolder(folder));
  talk.say(logbookSentences.watching(folder));
  await watchFolder({
    sizes: () => new Map(logsInFolder(folder, io)?.map((log) => [log, sizeOf(log, io)])),
    take: async (log) => {
      await addOrWhy({ kind: "log", log }, [], call, work);
    },
    wait: () => new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS)),
    isOver: () => false,
  });
  return EXIT.done;
}

function sizeOf(log: string, io: Io): number {
  return io.files.size(resolve(io.workFolder, log)) ?? 0;
}
