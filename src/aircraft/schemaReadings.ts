import * as v from "valibot";
import { CHANNEL_NAMES, type ChannelName, channelWords } from "../base/channels/index.ts";
import { number, words } from "./schemaFields.ts";

type ChannelTexts = Record<ChannelName, ReturnType<typeof channelText>>;

function channelText(description: string, example: string) {
  return v.optional(words(description, example));
}

function channelTexts(describe: (channel: string) => string, example: string): ChannelTexts {
  const entries = CHANNEL_NAMES.map((name) => [name, channelText(describe(channelWords(name)), example)]);
  return Object.fromEntries(entries) as ChannelTexts;
}

export const reading = v.strictObject({
  headerSignature: words(
    "Signature of the header these answers belong to, as a check prints it.",
    "5c0d1a2b",
  ),
  columns: v.optional(
    v.pipe(
      v.strictObject(channelTexts((channel) => `Header of the column with ${channel}, or #N.`, "U [V]")),
      v.description("Channel name to the header of its column, or #N for the Nth column."),
      v.metadata({ examples: [{ packVoltage: "U [V]" }] }),
    ),
    {},
  ),
  units: v.optional(
    v.pipe(
      v.strictObject(channelTexts((channel) => `Unit of ${channel} in the log.`, "mV")),
      v.description("Channel name to its unit in the log."),
      v.metadata({ examples: [{ packVoltage: "mV" }] }),
    ),
    {},
  ),
  rateHz: v.optional(
    v.pipe(
      v.nullable(number("readings.rateHz")),
      v.description(
        "Rows per second, for a log without a usable clock; null when the clock is good. Unit: Hz.",
      ),
      v.metadata({ examples: [5] }),
    ),
    null,
  ),
  decimalMark: v.optional(
    v.pipe(
      v.nullable(v.picklist(["point", "comma"])),
      v.description("Decimal mark of the log; null to find it."),
      v.metadata({ examples: ["comma"] }),
    ),
    null,
  ),
  dateOrder: v.optional(
    v.pipe(
      v.nullable(v.picklist(["dmy", "mdy", "ymd"])),
      v.description("Order of day, month and year in the log; null to find it."),
      v.metadata({ examples: ["dmy"] }),
    ),
    null,
  ),
});
