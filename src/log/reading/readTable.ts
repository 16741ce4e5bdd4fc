import type { ChannelName } from "../../base/channels/index.ts";
import { checkAnswers } from "./answers.ts";
import { deadCellQuestions, deadCellsOf, lostCellNotices } from "./cellNotices.ts";
import { cellSum } from "./cellSum.ts";
import { type ChannelChoices, chooseChannels } from "./chooseChannels.ts";
import { columnChoices } from "./columnChoices.ts";
import { viewColumns } from "./columnView.ts";
import type { ReadingOptions, ReadOutcome } from "./contract.ts";
import { currentFromPower } from "./currentFromPower.ts";
import type { Decoding } from "./encoding.ts";
import { faintCurrentQuestions } from "./faintCurrent.ts";
import type { FoundClock } from "./foundClock.ts";
import type { Layout } from "./layout.ts";
import { missingChannels, nothingUseful } from "./missingChannels.ts";
import {
  cellNotices,
  channelQuestions,
  channelRemarks,
  contradictedUnits,
  derivedCurrentNotices,
  noteNotices,
  tableNotices,
} from "./notices.ts";
import { notRead, type UnreadLog } from "./outcomes.ts";
import { unnamedTimeQuestions } from "./questions.ts";
import { readTime } from "./readTime.ts";
import type { RowLines } from "./rowLines.ts";
import type { Table } from "./table.ts";

export interface Reading {
  readonly layout: Layout;
  readonly decoding: Decoding;
  readonly options: ReadingOptions;
  readonly base: UnreadLog;
}

/** The clock and the channels of a table. */
export function readTable(table: Table, reading: Reading): ReadOutcome {
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
  const deadCells = deadCellsOf(views);
  const cellQuestions = deadCellQuestions(channels, deadCells, options.cells);
  const isSummed = !channels.has("packVoltage") && cellQuestions.length === 0;
  const sum = isSummed ? cellSum(channels, options.cells, deadCells) : null;
  if (sum !== null) channels.set("packVoltage", sum.values);
  const packs = sum === null ? packSum(channels) : null;
  if (packs !== null) channels.set("packVoltage", packs);
  const isAsked = choices.rivalries.some(({ channel }) => channel === "current");
  const derived = isAsked ? null : currentFromPower(channels, views);
  if (derived !== null) channels.set("current", derived.values);
  const questions = [
    ...answers.notices,
    ...("timeS" in time ? time.notices : [time]),
    ...unnamedTimeQuestions(
      clock,
      views[clock?.column ?? -1],
      channels.get("current"),
      options.capacityMah ?? null,
    ),
    ...channelQuestions(choices),
    ...contradictedUnits(choices, options.cells),
    ...(answers.units.has("current") ? [] : faintCurrentQuestions(choices)),
    ...cellQuestions,
    ...nothingUseful(channels, choices, table, views),
  ];
  const inUse = views.filter(
    (view) => taken.has(view.at) || choices.chosen.some((each) => each.view === view),
  );
  const notices = [
    ...questions,
    ...tableNotices(table, layout, decoding),
    ...cellNotices(inUse, coreColumns(clock, choices)),
    ...channelRemarks(choices),
    ...lostCellNotices(sum?.lost ?? [], table),
    ...derivedCurrentNotices(derived?.view ?? null),
    ...noteNotices(sum?.cellCount ?? null, packs !== null, layout.headerLine === 0),
    ...(cellQuestions.length > 0 ? [] : missingChannels(channels, choices, views)),
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
      headerSignature: base.headerSignature!,
      columns,
      dataLines: table.dataLines,
      rows: table.rows,
      timeS: time.timeS,
      clock: time.clock,
      channels,
      lineOfRow: lineTeller(table.lines),
      notices,
    },
  };
}

/** Apart, so that it does not hold on to the table. */
function lineTeller(lines: RowLines): (row: number) => number {
  return (row) => lines.lineOfRow(row);
}

/** Volts of two packs in series together; null where the log holds the whole or not both. */
function packSum(channels: ReadonlyMap<ChannelName, Float64Array>): Float64Array | null {
  const [first, second] = [channels.get("packVoltage1"), channels.get("packVoltage2")];
  if (channels.has("packVoltage") || first === undefined || second === undefined) return null;
  return first.map((volts, row) => volts + second[row]!);
}

const CORE: ReadonlySet<ChannelName> = new Set(["packVoltage", "packVoltage1", "packVoltage2", "current"]);

function coreColumns(clock: FoundClock | null, choices: ChannelChoices): ReadonlySet<number> {
  const core = choices.chosen.filter((each) => CORE.has(each.channel));
  return new Set([...core.map((each) => each.view.at), ...(clock === null ? [] : [clock.column])]);
}
