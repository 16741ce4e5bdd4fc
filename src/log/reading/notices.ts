import { type ChannelName, channelFacts } from "../../base/channels/index.ts";
import { LISTED_LINES, type Notice } from "../../base/notices/index.ts";
import { plainNumber } from "../../base/quantity/index.ts";
import { dimensionOf, isPlausibleUnit } from "./channelUnit.ts";
import type { ChannelChoices, Rivalry, UnitDoubt } from "./chooseChannels.ts";
import type { ColumnView } from "./columnView.ts";
import type { Decoding } from "./encoding.ts";
import type { Layout } from "./layout.ts";
import * as say from "./sentences.ts";
import type { Table } from "./table.ts";
import type { LineCount } from "./tableDefects.ts";
import { type Unit, unitNames } from "./units.ts";

/** Options that one question lists. */
const MOST_OPTIONS = 16;
/** Cells in series of large electric models (common practice, no published source). */
const USUAL_CELLS = [6, 8, 12] as const;
/** Fourteen magnets, the commonest outrunner (common practice, no published source). */
const USUAL_POLE_PAIRS = 7;

const name = (view: ColumnView): string => say.columnName(view.header, view.at);

/** What was done to get rows out of the bytes. */
export function tableNotices(table: Table, layout: Layout, decoding: Decoding): readonly Notice[] {
  const { defects } = table;
  const counted = (
    code: string,
    severity: Notice["severity"],
    count: LineCount,
    text: (count: LineCount) => string,
  ) =>
    count.count === 0
      ? []
      : [{ code, severity, text: text(count), count: count.count, lines: [...count.lines] }];
  return [
    ...(decoding.isGuessed
      ? [
          {
            code: "encoding-guessed",
            severity: "note" as const,
            text: say.guessedEncoding(decoding.encoding),
          },
        ]
      : []),
    ...(layout.preamble.length > 0
      ? [
          {
            code: "preamble",
            severity: "note" as const,
            count: layout.preamble.length,
            text: say.preamble(layout.preamble.length, layout.preamble[0]!),
          },
        ]
      : []),
    ...counted("header-repeated", "warning", defects.repeatedHeaders, say.repeatedHeader),
    ...counted("columns-changed", "warning", defects.changedHeaders, say.changedColumns),
    ...counted("decimal-mark-changed", "warning", defects.markChanges, say.markChanges),
    ...counted("rows-wrong-width", "warning", defects.wrongWidth, (count) =>
      say.wrongWidth(count, layout.header.length),
    ),
    ...counted("quote-unterminated", "warning", defects.brokenQuotes, say.brokenQuote),
    ...(defects.blankTails.count * 2 > table.rows
      ? []
      : counted("rows-blank-tail", "warning", defects.blankTails, say.blankTails)),
    ...counted("rows-damaged", "warning", defects.damaged, say.damaged),
    ...(defects.cutLastLine === null
      ? []
      : [
          {
            code: "last-line-cut",
            severity: "warning" as const,
            text: say.cutLastLine(defects.cutLastLine),
            count: 1,
            lines: [defects.cutLastLine],
          },
        ]),
    ...(decoding.tailBytes > 0
      ? [
          {
            code: "erased-tail",
            severity: "warning" as const,
            text: say.tail(decoding.tailBytes),
            count: decoding.tailBytes,
          },
        ]
      : []),
    ...counted("comment-lines", "note", defects.comments, say.comments),
    ...counted("footer", "note", defects.footer, say.footer),
    ...defects.longCells.map((cell) => ({
      code: "long-comment",
      severity: "warning" as const,
      lines: [cell.line],
      count: 1,
      text: say.longCell(cell.line, cell.characters, say.columnName(table.names[cell.column]!, cell.column)),
    })),
  ];
}

/** Missing and unreadable cells of the columns in use. */
export function cellNotices(views: readonly ColumnView[], core: ReadonlySet<number>): readonly Notice[] {
  return views.flatMap((view) => {
    const { column } = view;
    const missing = column.blankCount + column.missingWordCount;
    const lines = [...column.blankLines, ...column.missingLines].sort((a, b) => a - b).slice(0, LISTED_LINES);
    const isSerious = column.missingWordCount > 0 || core.has(view.at);
    const notices: Notice[] = [];
    if (missing > 0) {
      notices.push({
        code: "cells-missing",
        severity: isSerious ? "warning" : "note",
        count: missing,
        lines,
        text: say.missingCells(missing, name(view), [...column.missingWords], lines),
      });
    }
    const first = column.unreadable[0];
    if (first !== undefined) {
      const at = column.unreadable.map((cell) => cell.line);
      notices.push({
        code: "cells-unreadable",
        severity: "warning",
        count: column.unreadableCount,
        lines: at,
        text: say.unreadableCells(column.unreadableCount, name(view), first.text, at),
      });
    }
    return notices;
  });
}

/** Questions that the choice of channels leaves. */
export function channelQuestions(choices: ChannelChoices): readonly Notice[] {
  return [
    ...choices.rivalries.map(rivalryQuestion),
    ...choices.unitDoubts.map(unitQuestion),
    ...choices.perCell.map(perCellQuestion),
  ];
}

/** The log cannot tell how many cells; the usual large packs are offered. */
function perCellQuestion(view: ColumnView): Notice {
  const options = USUAL_CELLS.map((cells) => `--cells ${cells}`);
  return { code: "cells-needed", severity: "question", text: say.perCell(name(view)), options };
}

function rivalryQuestion({ channel, columns, isMotorCurrent }: Rivalry): Notice {
  const text = isMotorCurrent
    ? say.motorCurrent(name(columns[0]!))
    : say.rivals(
        channel,
        columns.map((view) => `${name(view)} (#${view.at + 1})`),
      );
  return {
    code: isMotorCurrent ? "motor-current-only" : "columns-alike",
    severity: "question",
    text,
    options: columns.slice(0, MOST_OPTIONS).map((view) => `--column ${channel}=#${view.at + 1}`),
  };
}

function unitQuestion({ channel, view, doubt, units, cellCounts }: UnitDoubt): Notice {
  if (cellCounts.length > 0) {
    return {
      code: "cells-unclear",
      severity: "question",
      text: say.cellCountUnclear(name(view), doubt, cellCounts[0]!),
      options: cellCounts.map((count) => `--cells ${count}`),
    };
  }
  return {
    code: "unit-unclear",
    severity: "question",
    text: say.channelUnit(channel, name(view), doubt),
    options: (units.length > 0 ? units : otherUnits(channel, view)).map(
      (unit) => `--unit ${channel}=${unit}`,
    ),
  };
}

/** The units that are left when the values fit none of the usual ones. */
function otherUnits(channel: ChannelName, view: ColumnView): readonly string[] {
  const stated = new Set(view.name.units.map((unit) => unit.name));
  return unitNames(dimensionOf(channel)).filter((unit) => !stated.has(unit));
}

/** A given unit that the header denies: obeyed with both numbers, or a question when no sensor shows such values. */
export function contradictedUnits(choices: ChannelChoices, cells: number | null): readonly Notice[] {
  return choices.chosen.flatMap(({ channel, view, unit, againstUnit }) => {
    if (againstUnit === null) return [];
    const inUnit = (each: Unit) =>
      `${plainNumber(view.range.high99 * each.factor + each.offset)} ${channelFacts(channel).unit}`;
    const isPlausible = isPlausibleUnit(channel, view, unit, cells);
    return [
      {
        code: "unit-contradicted",
        severity: isPlausible ? ("warning" as const) : ("question" as const),
        text: say.unitContradicted(
          name(view),
          againstUnit.name,
          unit.name,
          inUnit(againstUnit),
          inUnit(unit),
        ),
        options: [`--unit ${channel}=${againstUnit.name}`],
      },
    ];
  });
}

/** Remarks on channels that were chosen with less than a plain header. */
export function channelRemarks(choices: ChannelChoices): readonly Notice[] {
  const fromValues = choices.chosen
    .filter((each) => each.isUnitFromValues)
    .map((each) => ({
      code: "unit-from-values",
      severity: "note" as const,
      text: say.unitFromValues(each.channel, name(each.view), each.unit.name),
      options: [`--unit ${each.channel}=${each.unit.name}`],
    }));
  const perCell = choices.chosen
    .filter((each) => each.channel === "packVoltage" && each.unit.name.endsWith("/cell"))
    .map((each) => ({
      code: "pack-from-cell",
      severity: "note" as const,
      text: say.packFromCell(name(each.view)),
    }));
  const electrical = choices.electrical.map((view) => polePairsNotice(view, "warning"));
  return [...fromValues, ...perCell, ...electrical];
}

/** An electrical speed without the pole pairs. */
export function polePairsNotice(view: ColumnView, severity: "warning" | "question"): Notice {
  return {
    code: "pole-pairs-needed",
    severity,
    text: say.electricalSpeed(name(view)),
    options: [`--pole-pairs ${USUAL_POLE_PAIRS}`],
  };
}

/** @param view the column of power that the current was derived from */
export function derivedCurrentNotices(view: ColumnView | null): readonly Notice[] {
  if (view === null) return [];
  return [{ code: "current-derived", severity: "warning", text: say.currentDerived(name(view)) }];
}

/** What the reader should know although nothing is wrong. */
export function noteNotices(
  summedCells: number | null,
  arePacksSummed: boolean,
  isHeaderless: boolean,
): readonly Notice[] {
  return [
    ...(summedCells === null
      ? []
      : [{ code: "cells-summed", severity: "note" as const, text: say.sharedCellSum(summedCells) }]),
    ...(arePacksSummed
      ? [{ code: "packs-in-series", severity: "note" as const, text: say.packsInSeries() }]
      : []),
    ...(isHeaderless ? [{ code: "no-header", severity: "note" as const, text: say.headerless() }] : []),
  ];
}

/** A channel that the measures need and the log does not show. `free`: columns whose header says nothing. */
export function notFoundNotice(channel: ChannelName, free: readonly ColumnView[]): Notice {
  return {
    code: "channel-not-found",
    severity: "warning",
    text: say.notFound(
      channel,
      free.slice(0, 4).map((view) => `${name(view)} (#${view.at + 1})`),
    ),
    options: free.slice(0, 2).map((view) => `--column ${channel}=#${view.at + 1}`),
  };
}
