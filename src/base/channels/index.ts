export {
  type CellChannel,
  CHANNEL_NAMES,
  type ChannelFacts,
  type ChannelName,
  channelFacts,
  channelWords,
  isCellChannel,
  isChannelName,
  MOST_CELLS,
} from "./channels.ts";
