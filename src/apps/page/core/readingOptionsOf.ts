import { type ChannelName, isChannelName } from "../../../base/channels/index.ts";
import type { ReadingOptions } from "../../../log/reading/index.ts";
import type { Answers } from "../messages.ts";

/** The answers as the reader takes them. */
export function readingOptionsOf(answers: Answers): ReadingOptions {
  const { columns, units, ...others } = answers;
  return { ...others, columns: byChannel(columns), units: byChannel(units) };
}

function byChannel(record: Readonly<Record<string, string>>): ReadonlyMap<ChannelName, string> {
  return new Map(
    Object.entries(record).filter((entry): entry is [ChannelName, string] => isChannelName(entry[0])),
  );
}
