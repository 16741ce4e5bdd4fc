import type { ChannelName } from "../../base/channels/index.ts";
import { isCellChannel } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { type CheckedAnswers, checkAnswers, withRemembered } from "./answers.ts";
import { cellSum } from "./cellSum.ts";
import { type ChannelChoices, chooseChannels } from "./chooseChannels.ts";
import { chooseTime, clockOfRate } from "./chooseTime.ts";
import { columnChoices } from "./columnChoices.ts";
import { type ColumnView, viewColumns } from "./columnView.ts";
import type {
  ClockFacts,
  Dialect,
  NotRead,
  ReadingOptions,
  ReadOutcome,
  RememberedReading,
} from "./contract.ts";
import { delimiterFromText } from "./delimiter.ts";
import { type Decoding, findEncoding } from "./encoding.ts";
import type { FoundClock } from "./foundClock.ts";
import { headLinesOf, previewOf } from "./head.ts";
import { findLayout, type Layout } from "./layout.ts";
import { MOST_BYTES, MOST_COLUMNS } from "./limits.ts";
import { lineBlocks } from "./lines.ts";
import { cellNotices, channelQuestions, channelRemarks, notFoundNotice, tableNotices } from "./notices.ts";
import { layoutProblemNotice, noHeaderNotice, timeNotice } from "./questions.ts";
import * as say from "./sentences.ts";
import { headerSignature } from "./signature.ts";
import { type Table, TableBuilder } from "./table.ts";

/**
 * Reads one log: bytes -> encoding -> lines -> layout -> table of numbers -> clock and channels.
 * Never throws for any bytes: what cannot be read is a question or a refusal with the option that settles it.
 */
export function readLog(
  bytes: Uint8Array,
  options: ReadingOptions,
  remembered: readonly RememberedReading[],
): ReadOutcome {
  if (bytes.length > MOST_BYTES) return refusal("too-many-bytes", say.tooManyBytes(bytes.length));
  const decoding = findEncoding(bytes);
  if (decoding === "empty") {
    return refusal("empty", bytes.length === 0 ? say.empty() : say.onlyErased(bytes.length));
  }
  if (decoding === "binary") return refusal("not-text", say.notText());
  const head = headLinesOf(bytes, decoding);
  if (head.overlongLine !== null) return refusal("line-too-long", say.lineTooLong(head.overlongLine));
  if (head.lines.every((line) => line.trim() === "")) return refusal("empty", say.onlyErased(bytes.length));
  return readText(bytes, decoding, head.lines, options, remembered);
}

function readText(
  bytes: Uint8Array,
  decoding: Decoding,
  head: readonly string[],
  given: ReadingOptions,
  remembered: readonly RememberedReading[],
): ReadOutcome {
  const delimiter = given.delimiter === null ? "," : delimiterFromText(given.delimiter);
  if (delimiter.length !== 1) {
    return question("bad-delimiter", say.badDelimiter(given.delimiter ?? ""), DELIMITER_OPTIONS);
  }
  const first = findLayout(head, layoutAnswers(given));
  const signature = headerSignature(first.header, "units" in first ? first.units : null);
  const known = remembered.find((each) => each.headerSignature === signature);
  const options = withRemembered(given, known);
  const layout = known === undefined ? first : findLayout(head, layoutAnswers(options));
  const dialect: Dialect = {
    encoding: decoding.encoding,
    delimiter: layout.delimiter,
    decimalMark: layout.mark,
    headerLine: layout.headerLine,
  };
  const base = {
    dialect,
    headerSignature: signature,
    columns: [],
    dataLines: 0,
    preview: previewOf(head, layout.delimiter),
  };
  if ("problem" in layout) return notRead(base, [layoutProblemNotice(layout)]);
  if (layout.header.length > MOST_COLUMNS) {
    return notRead(base, [
      { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(layout.header.length) },
    ]);
  }
  if (layout.headerLine === 0 && options.columns.size === 0) {
    return notRead(base, [noHeaderNotice(layout, head)]);
  }
  const built = buildTable(bytes, decoding, layout);
  if ("code" in built) return notRead(base, [built]);
  const { table } = built;
  if (table.rows === 0)
    return notRead(base, [noRowsNotice(layout), ...tableNotices(table, layout, decoding)]);
  return readTable(table, {
    layout: built.layout,
    decoding,
    options,
    base: { ...base, dataLines: table.dataLines },
  });
}

function layoutAnswers(options: ReadingOptions) {
  const headers = [...options.columns.values()];
  return {
    delimiter: options.delimiter,
    decimalMark: options.decimalMark,
    isByNumber: headers.length > 0 && headers.every((header) => header.startsWith("#")),
  };
}

/**
 * All rows as numbers, with the layout that held. A log whose first rows do not prove the decimal mark is read
 * again when a later row does.
 */
function buildTable(
  bytes: Uint8Array,
  decoding: Decoding,
  layout: Layout,
): { table: Table; layout: Layout } | Notice {
  const builder = new TableBuilder(layout);
  for (const block of lineBlocks(bytes, decoding)) {
    if (block.overlongLine !== null) {
      return { code: "line-too-long", severity: "refusal", text: say.lineTooLong(block.overlongLine) };
    }
    builder.addBlock(block);
    if (builder.tooLarge) return { code: "too-many-rows", severity: "refusal", text: say.tooManyRows() };
    if (builder.columnCount > MOST_COLUMNS) {
      return { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(builder.columnCount) };
    }
  }
  const table = builder.finished();
  const isUnproven =
    !layout.isMarkProven && table.defects.markChanges.count === 1 && table.mark !== layout.mark;
  if (!isUnproven) return { table, layout };
  return buildTable(bytes, decoding, { ...layout, mark: table.mark, isMarkProven: true });
}

interface Reading {
  readonly layout: Layout;
  readonly decoding: Decoding;
  readonly options: ReadingOptions;
  readonly base: Omit<NotRead, "state" | "notices">;
}

function readTable(table: Table, reading: Reading): ReadOutcome {
  const { options, layout, decoding } = reading;
  const answers = checkAnswers(options, table.names);
  const views = viewColumns(table, layout.units);
  const time = readTime(table, views, options, answers);
  const clock = "timeS" in time ? time.found : null;
  const taken = new Set([clock?.column ?? -1, clock?.dateColumn ?? -1]);
  const choices = chooseChannels(views, taken, {
    ...answers,
    cells: options.cells,
    polePairs: options.polePairs,
  });
  const columns = columnChoices(views, clock, choices);
  const channels = new Map(choices.chosen.map((each) => [each.channel, each.values] as const));
  const sum = channels.has("packVoltage") ? null : cellSum(channels, options.cells);
  if (sum !== null) channels.set("packVoltage", sum.values);
  const questions = [
    ...answers.notices,
    ...("timeS" in time ? time.notices : [time]),
    ...channelQuestions(choices),
    ...nothingUseful(channels, choices, table),
  ];
  const inUse = views.filter(
    (view) => taken.has(view.at) || choices.chosen.some((each) => each.view === view),
  );
  const notices = [
    ...questions,
    ...tableNotices(table, layout, decoding),
    ...cellNotices(inUse, coreColumns(clock, choices)),
    ...channelRemarks(choices),
    ...(sum === null
      ? []
      : [{ code: "cells-summed", severity: "note" as const, text: say.sharedCellSum(sum.cellCount) }]),
    ...(layout.headerLine === 0
      ? [{ code: "no-header", severity: "note" as const, text: say.headerless() }]
      : []),
    ...missingChannels(channels, choices),
  ];
  const base = { ...reading.base, columns, dialect: { ...reading.base.dialect!, decimalMark: layout.mark } };
  if (
    !("timeS" in time) ||
    notices.some((each) => each.severity === "question" || each.severity === "refusal")
  ) {
    return notRead(base, notices);
  }
  return {
    state: "read",
    log: {
      dialect: base.dialect,
      headerSignature: base.headerSignature ?? "",
      columns,
      dataLines: table.dataLines,
      rows: table.rows,
      timeS: time.timeS,
      clock: time.clock,
      channels,
      lineOfRow: (row) => table.lines.lineOfRow(row),
      notices,
    },
  };
}

interface ReadTime {
  readonly timeS: Float64Array;
  readonly clock: ClockFacts;
  readonly found: FoundClock | null;
  readonly notices: readonly Notice[];
}

function readTime(
  table: Table,
  views: readonly ColumnView[],
  options: ReadingOptions,
  answers: CheckedAnswers,
): ReadTime | Notice {
  if (options.rateHz !== null && options.rateHz > 0) {
    return { ...clockOfRate(table.lines, options.rateHz), found: null, notices: [] };
  }
  const column = answers.columns.get("time") ?? null;
  const choice = chooseTime(views, {
    column,
    unit: answers.units.get("time") ?? null,
    rateHz: options.rateHz,
    dateOrder: options.dateOrder,
  });
  if (!("clock" in choice)) return timeNotice(choice, views, column);
  const { clock } = choice;
  const notices: Notice[] =
    clock.ambiguousDate === null
      ? []
      : [
          {
            code: "date-ambiguous",
            severity: "note",
            text: say.ambiguousDate(clock.ambiguousDate),
            options: ["--date-order dmy", "--date-order mdy"],
          },
        ];
  return { timeS: clock.timeS, clock: clock.clock, found: clock, notices };
}

function coreColumns(clock: FoundClock | null, choices: ChannelChoices): ReadonlySet<number> {
  const core = choices.chosen.filter((each) => each.channel === "packVoltage" || each.channel === "current");
  return new Set([...core.map((each) => each.view.at), ...(clock === null ? [] : [clock.column])]);
}

function nothingUseful(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
  table: Table,
): readonly Notice[] {
  const isAsked = choices.rivalries.length + choices.unitDoubts.length + choices.electrical.length > 0;
  const isUseful = channels.has("packVoltage") || channels.has("current") || channels.has("shaftSpeed");
  if (isUseful || isAsked || [...channels.keys()].some(isCellChannel)) return [];
  return [
    {
      code: "no-channel",
      severity: "refusal",
      text: say.nothingUseful(table.names),
      options: ["--column packVoltage=HEADER", "--column current=HEADER"],
    },
  ];
}

function missingChannels(
  channels: ReadonlyMap<ChannelName, unknown>,
  choices: ChannelChoices,
): readonly Notice[] {
  const asked = new Set([...choices.rivalries, ...choices.unitDoubts].map((each) => each.channel));
  return (["packVoltage", "current"] as const)
    .filter((channel) => !channels.has(channel) && !asked.has(channel))
    .map(notFoundNotice);
}

function noRowsNotice(layout: Layout): Notice {
  return {
    code: "no-data-rows",
    severity: "refusal",
    text: say.noDataRows(layout.header.join(layout.delimiter), layout.headerLine),
  };
}

const DELIMITER_OPTIONS = ["--delimiter ,", "--delimiter ;", "--delimiter tab"];

function question(code: string, text: string, options: readonly string[]): NotRead {
  return {
    ...refusal(code, text),
    state: "question",
    notices: [{ code, severity: "question", text, options }],
  };
}

function refusal(code: string, text: string): NotRead {
  return {
    state: "refusal",
    dialect: null,
    headerSignature: null,
    columns: [],
    dataLines: 0,
    preview: [],
    notices: [{ code, severity: "refusal", text }],
  };
}

function notRead(base: Omit<NotRead, "state" | "notices">, notices: readonly Notice[]): NotRead {
  const isRefusal = notices.some((notice) => notice.severity === "refusal");
  return { ...base, state: isRefusal ? "refusal" : "question", notices };
}
