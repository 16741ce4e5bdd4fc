import { type ChannelName, isCellChannel } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { ChannelChoices } from "./chooseChannels.ts";
import type { ColumnView } from "./columnView.ts";
import { likelyColumns } from "./likelyColumns.ts";
import { notFoundNotice, polePairsNotice } from "./notices.ts";
import * as say from "./sentences.ts";
import type { Table } from "./table.ts";

/** A log that tells neither volts nor amps nor speed is of no use. */
export function nothingUseful(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
  table: Table,
  views: readonly ColumnView[],
): readonly Notice[] {
  const isAsked = choices.rivalries.length + choices.unitDoubts.length + choices.perCell.length > 0;
  const isUseful = channels.has("packVoltage") || channels.has("current") || channels.has("shaftSpeed");
  if (isUseful || isAsked || [...channels.keys()].some(isCellChannel)) return [];
  const electrical = choices.electrical[0];
  if (electrical !== undefined) return [polePairsNotice(electrical, "question")];
  return [
    {
      code: "no-channel",
      severity: "refusal",
      text: say.nothingUseful(table.names),
      options: likelyOptions(views, table),
    },
  ];
}

/** The columns most like volts and amps by their numbers, of at most 200 rows spread over the log. */
function likelyOptions(views: readonly ColumnView[], table: Table): readonly string[] {
  const stride = Math.max(1, Math.floor(table.rows / 200));
  const picked = Array.from({ length: Math.ceil(table.rows / stride) }, (_, index) => index * stride);
  const likely = likelyColumns(picked.map((row) => views.map((view) => view.values[row]!)));
  return (["packVoltage", "current"] as const).flatMap((channel) => {
    const at = likely[channel];
    return at === null ? [] : [`--column ${channel}=#${at + 1}`];
  });
}

/** Volts or amps that no column holds: the log is still read. */
export function missingChannels(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
  views: readonly ColumnView[],
): readonly Notice[] {
  const asked = new Set([...choices.rivalries, ...choices.unitDoubts].map((each) => each.channel));
  const free = views.filter((view) => choices.leftAlone.has(view.at) && isUnnamed(view));
  return (["packVoltage", "current"] as const)
    .filter((channel) => !channels.has(channel) && !asked.has(channel))
    .filter((channel) => channel !== "packVoltage" || choices.perCell.length === 0)
    .map((channel) => notFoundNotice(channel, free));
}

/** A column whose header says nothing: it may hold what is missing. */
function isUnnamed(view: ColumnView): boolean {
  return view.quantity === null && view.excluded === null && view.range.count > 0 && !view.range.isDead;
}
