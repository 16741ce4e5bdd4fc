import { firstLines, type Notice, type Severity } from "../../base/notices/index.ts";
import type { ReadLog } from "../reading/index.ts";
import type { SpreadRows } from "./sameStamps.ts";
import * as sentences from "./sentences.ts";
import type { Walk } from "./walk.ts";

/** What was done to the clock, one record each kind. */
export function clockNotices(log: ReadLog, walk: Walk, spread: SpreadRows): Notice[] {
  const { events } = walk;
  const notices: Notice[] = [];
  const add = (
    code: string,
    severity: Severity,
    rows: readonly number[],
    text: (lines: readonly number[]) => string,
    count = rows.length,
  ) => {
    if (rows.length === 0) return;
    const lines = rows.slice(0, 20).map(log.lineOfRow);
    notices.push({ code, severity, text: text(lines), count, lines: firstLines(lines) });
  };
  const untimed = untimedRows(log);
  add("time-missing", "warning", untimed, (lines) => sentences.timeMissing(untimed.length, lines));
  add("clock-wrapped", "note", events.wrapRows, (lines) => sentences.clockWrapped(log.clock.kind, lines));
  add("time-went-back", "warning", events.backwardRows, (lines) =>
    sentences.timeWentBack(events.backwardS, lines),
  );
  add("time-jumped", "warning", events.jumpRows, (lines) => sentences.timeJumped(lines));
  add("rows-out-of-order", "warning", events.disorderedRows, (lines) =>
    sentences.rowsOutOfOrder(events.disorderedRows.length, lines),
  );
  add("time-damaged", "warning", events.loneStampRows, (lines) =>
    sentences.timeDamaged(events.loneStampRows.length, lines),
  );
  const duplicates = [...events.replayedRows, ...spread.duplicateRows].sort((a, b) => a - b);
  add("duplicate-rows", "warning", duplicates, (lines) => sentences.duplicateRows(duplicates.length, lines));
  add("clock-stood-still", "warning", spread.stillRows, (lines) =>
    sentences.clockStoodStill(spread.stillS, lines),
  );
  const moved = spread.firstMovedRow === null ? [] : [spread.firstMovedRow];
  const text = walk.stamps.isCoarse ? sentences.severalRowsPerStamp : sentences.sameStamps;
  add("rows-share-a-stamp", "note", moved, (lines) => text(spread.movedRows, lines[0]!), spread.movedRows);
  return notices;
}

function untimedRows(log: ReadLog): number[] {
  const rows: number[] = [];
  for (let row = 0; row < log.rows; row++) if (!Number.isFinite(log.timeS[row])) rows.push(row);
  return rows;
}
