import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { ChannelChoices } from "./chooseChannels.ts";
import { notFoundNotice, polePairsNotice } from "./notices.ts";
import * as say from "./sentences.ts";
import type { Table } from "./table.ts";

/** A log that tells neither volts nor amps nor speed is of no use. */
export function nothingUseful(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
  table: Table,
): readonly Notice[] {
  const isAsked = choices.rivalries.length + choices.unitDoubts.length > 0;
  const isUseful = channels.has("packVoltage") || channels.has("current") || channels.has("shaftSpeed");
  if (isUseful || isAsked || [...channels.keys()].some(isCellChannel)) return [];
  const electrical = choices.electrical[0];
  if (electrical !== undefined) return [polePairsNotice(electrical, "question")];
  return [
    {
      code: "no-channel",
      severity: "refusal",
      text: say.nothingUseful(table.names),
      options: ["--column packVoltage=HEADER", "--column current=HEADER"],
    },
  ];
}

/** Volts or amps that no column holds: the log is still read. */
export function missingChannels(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
): readonly Notice[] {
  const asked = new Set([...choices.rivalries, ...choices.unitDoubts].map((each) => each.channel));
  return (["packVoltage", "current"] as const)
    .filter((channel) => !channels.has(channel) && !asked.has(channel))
    .map(notFoundNotice);
}
