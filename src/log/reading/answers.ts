import { CHANNEL_NAMES, type ChannelName, isChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { nearestWord } from "../../base/words/index.ts";
import { dimensionOf } from "./channelUnit.ts";
import type { ReadingOptions, RememberedReading } from "./contract.ts";
import * as say from "./sentences.ts";
import { type Unit, unitNames, unitOf } from "./units.ts";

/** Characters of a name that are compared with others. */
const LONGEST_COMPARED = 100;

/** No answer given. */
export const NO_READING_OPTIONS: ReadingOptions = {
  columns: new Map(),
  units: new Map(),
  rateHz: null,
  decimalMark: null,
  delimiter: null,
  dateOrder: null,
  cells: null,
  polePairs: null,
};

/** Given answers, completed by the remembered ones of the same header; what is given wins. */
export function withRemembered(
  given: ReadingOptions,
  remembered: RememberedReading | undefined,
): ReadingOptions {
  if (remembered === undefined) return given;
  return {
    ...given,
    columns: new Map([...entries(remembered.columns), ...given.columns]),
    units: new Map([...entries(remembered.units), ...given.units]),
    rateHz: given.rateHz ?? remembered.rateHz,
    decimalMark: given.decimalMark ?? remembered.decimalMark,
    dateOrder: given.dateOrder ?? remembered.dateOrder,
  };
}

function entries(record: Readonly<Partial<Record<ChannelName, string>>>): [ChannelName, string][] {
  return Object.entries(record).filter(
    (entry): entry is [ChannelName, string] => typeof entry[1] === "string",
  );
}

export interface CheckedAnswers {
  /** Channel to 0-based column. */
  readonly columns: ReadonlyMap<ChannelName, number>;
  readonly units: ReadonlyMap<ChannelName, Unit>;
  readonly isElectrical: boolean;
  readonly notices: readonly Notice[];
}

/** Looks the answers up in the header; what cannot be found is a question with the nearest name. */
export function checkAnswers(options: ReadingOptions, names: readonly string[]): CheckedAnswers {
  const columns = new Map<ChannelName, number>();
  const units = new Map<ChannelName, Unit>();
  const notices: Notice[] = [];
  for (const [channel, header] of options.columns) {
    const column = isChannelName(channel) ? columnOf(header, names) : unknownChannel(channel);
    if (typeof column === "number") columns.set(channel, column);
    else notices.push(withChannel(column, channel));
  }
  for (const [channel, text] of options.units) {
    if (!isChannelName(channel)) {
      notices.push(unknownChannel(channel));
      continue;
    }
    const unit = givenUnit(channel, text, options.cells);
    if (unit !== null) units.set(channel, unit);
    else notices.push(unknownUnit(channel, text));
  }
  if (options.rateHz !== null && !(options.rateHz > 0 && Number.isFinite(options.rateHz))) {
    notices.push({
      code: "bad-rate",
      severity: "question",
      text: say.badRate(options.rateHz),
      options: ["--rate 10"],
    });
  }
  const speedUnit = options.units.get("shaftSpeed")?.toLowerCase() ?? "";
  return { columns, units, notices, isElectrical: /^e-?rpm$|electrical/.test(speedUnit) };
}

/** "V/cell" is volts of one cell, made volts of the pack by the cell count. */
function givenUnit(channel: ChannelName, text: string, cells: number | null): Unit | null {
  const perCell = /^(m?v)\s?(?:\/|per )\s?cell$/i.exec(text.trim());
  if (perCell !== null && channel === "packVoltage" && cells !== null) {
    const volts = unitOf("voltage", perCell[1]!)!;
    return { ...volts, name: `${volts.name}/cell`, factor: volts.factor * cells };
  }
  return unitOf(dimensionOf(channel), text);
}

function columnOf(header: string, names: readonly string[]): number | Notice {
  const numbered = /^#(\d{1,5})$/.exec(header.trim());
  if (numbered !== null) {
    const at = Number(numbered[1]) - 1;
    return at >= 0 && at < names.length ? at : unknownHeader(header, names);
  }
  const exact = indexesOf(names, (name) => name === header.trim());
  const found =
    exact.length > 0 ? exact : indexesOf(names, (name) => name.toLowerCase() === header.trim().toLowerCase());
  if (found.length === 1) return found[0]!;
  if (found.length === 0) return unknownHeader(header, names);
  return {
    code: "header-twice",
    severity: "question",
    text: say.headerTwice(
      header,
      found.map((at) => at + 1),
    ),
    options: found.map((at) => `#${at + 1}`),
  };
}

/** Options of a column problem name the channel that asked for it. */
function withChannel(notice: Notice, channel: ChannelName): Notice {
  if (notice.options === undefined) return notice;
  return { ...notice, options: notice.options.map((option) => `--column ${channel}=${option}`) };
}

function indexesOf(names: readonly string[], is: (name: string) => boolean): number[] {
  return names.flatMap((name, at) => (is(name) ? [at] : []));
}

function unknownHeader(header: string, names: readonly string[]): Notice {
  const known = names.filter((name) => name !== "" && name.length <= LONGEST_COMPARED);
  const nearest = nearestWord(header.slice(0, LONGEST_COMPARED), known);
  const at = nearest === null ? -1 : names.indexOf(nearest);
  const text = say.unknownHeader(header, nearest, names);
  return { code: "unknown-header", severity: "question", text, options: at < 0 ? [] : [`#${at + 1}`] };
}

function unknownChannel(channel: string): Notice {
  const nearest = nearestWord(channel.slice(0, LONGEST_COMPARED), CHANNEL_NAMES);
  return { code: "unknown-channel", severity: "question", text: say.unknownChannel(channel, nearest) };
}

function unknownUnit(channel: ChannelName, text: string): Notice {
  const names = unitNames(dimensionOf(channel));
  return {
    code: "unknown-unit",
    severity: "question",
    text: say.unknownUnit(channel, text, names),
    options: names.map((name) => `--unit ${channel}=${name}`),
  };
}
