import type { ChannelName } from "../../base/channels/index.ts";
import type { ChannelChoices, ChosenChannel } from "./chooseChannels.ts";
import type { ColumnView } from "./columnView.ts";
import type { ColumnChoice } from "./contract.ts";
import type { FoundClock } from "./foundClock.ts";
import { likelyRateHz } from "./questions.ts";

/** Every file column with how it was read, in the order of the file. */
export function columnChoices(
  views: readonly ColumnView[],
  clock: FoundClock | null,
  choices: ChannelChoices,
): readonly ColumnChoice[] {
  const chosen = new Map(choices.chosen.map((each) => [each.view.at, each]));
  return views.map((view) => {
    if (clock?.column === view.at) return clockChoice(view, clock);
    if (clock?.dateColumn === view.at) return timePart(view);
    const channel = chosen.get(view.at);
    return channel === undefined ? aloneChoice(view, choices) : channelChoice(view, channel);
  });
}

function base(view: ColumnView) {
  return { header: view.header, column: view.at + 1 };
}

function forced(channel: ChannelName, view: ColumnView): string {
  return `--column ${channel}=#${view.at + 1}`;
}

function clockChoice(view: ColumnView, clock: FoundClock): ColumnChoice {
  const options = [
    forced("time", view),
    ...(clock.clock.kind === "elapsed" ? [`--unit time=${clock.unit}`] : []),
    `--rate ${likelyRateHz(view.column.length)}`,
  ];
  return { ...base(view), channel: "time", unit: clock.unit, why: clock.why, options };
}

function timePart(view: ColumnView): ColumnChoice {
  return {
    ...base(view),
    channel: "time",
    unit: "date",
    why: "the date of the clock beside it",
    options: [],
  };
}

function channelChoice(view: ColumnView, { channel, unit, why }: ChosenChannel): ColumnChoice {
  return {
    ...base(view),
    channel,
    unit: unit.name,
    why,
    options: [forced(channel, view), `--unit ${channel}=${unit.name}`],
  };
}

function aloneChoice(view: ColumnView, choices: ChannelChoices): ColumnChoice {
  const left = choices.leftAlone.get(view.at);
  const channel = left?.channel ?? null;
  const options = channel === null ? [`--column CHANNEL=#${view.at + 1}`] : [forced(channel, view)];
  return { ...base(view), channel: null, unit: null, why: left?.why ?? "not used", options };
}
