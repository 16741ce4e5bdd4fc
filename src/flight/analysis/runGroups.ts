import type { Notice } from "../../base/notices/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import { type AirborneSense, aboveGround, airborneSenses } from "./airborne.ts";
import { type PackVoltsRise, packVoltsRise } from "./packVoltsRise.ts";
import type { Run } from "./runs.ts";
import type { Segment } from "./segments.ts";
import { type BridgedPause, pausesBridged } from "./sentences.ts";

/** Runs that are one flight (or one bench run), and the rows of the log that belong to it. */
export interface RunGroup {
  readonly runs: readonly Run[];
  /** First run's start to last run's end. */
  readonly startS: number;
  readonly endS: number;
  readonly segment: Segment;
  readonly rows: { readonly firstRow: number; readonly lastRow: number };
  readonly notices: readonly Notice[];
}

const LONGEST_PAUSE_S = 60;
/** From power alone, a longer pause than this ends the flight in any case. */
const LONGEST_SILENT_PAUSE_S = 900;
/** Share of the rows of a pause that must be airborne for one flight. */
const AIRBORNE_SHARE = 0.7;

/** Groups the runs of one segment into flights; the rows of a pause between two flights are halved by time. */
export function runGroups(recording: Recording, segment: Segment, runs: readonly Run[]): readonly RunGroup[] {
  const first = runs[0];
  const last = runs.at(-1);
  if (!first || !last) return [];
  const senses = airborneSenses(recording, segment, first.startS, last.endS).filter(
    (sense) => sense.channel !== "groundSpeed",
  );
  const parts: { runs: Run[]; pauses: BridgedPause[] }[] = [{ runs: [first], pauses: [] }];
  for (const next of runs.slice(1)) {
    const part = parts.at(-1)!;
    const joint = jointOf(recording, segment, senses, part.runs.at(-1)!, next);
    if (joint === null) {
      parts.push({ runs: [next], pauses: [] });
    } else {
      part.pauses.push(...joint);
      part.runs.push(next);
    }
  }
  return withRows(recording, segment, parts);
}

/** Null when the two runs are two flights, else what must be said about joining them. */
function jointOf(
  recording: Recording,
  segment: Segment,
  senses: readonly AirborneSense[],
  before: Run,
  after: Run,
): readonly BridgedPause[] | null {
  const pauseS = after.startS - before.endS;
  if (isAirborneBetween(segment, senses, before, after)) return [];
  const rise: PackVoltsRise = packVoltsRise(recording, before, after);
  if (rise === "jumped") return null;
  if (pauseS <= LONGEST_PAUSE_S) return [];
  if (senses.length > 0 || pauseS > LONGEST_SILENT_PAUSE_S || rise === "unknown") return null;
  const [lineBefore, lineAfter] = [before.lastRow, after.firstRow].map(recording.lineOfRow);
  return [{ pauseS, lineBefore: lineBefore!, lineAfter: lineAfter! }];
}

function isAirborneBetween(
  segment: Segment,
  senses: readonly AirborneSense[],
  before: Run,
  after: Run,
): boolean {
  const length = Math.max(1, segment.lastRow - segment.firstRow);
  return senses.some((sense) => {
    let known = 0;
    let airborne = 0;
    for (let row = before.lastRow + 1; row < after.firstRow; row++) {
      const height = aboveGround(sense, row, (row - segment.firstRow) / length);
      if (Number.isNaN(height)) continue;
      known++;
      if (height > sense.margin) airborne++;
    }
    return known > 0 && airborne >= AIRBORNE_SHARE * known;
  });
}

function withRows(
  recording: Recording,
  segment: Segment,
  parts: readonly { readonly runs: readonly Run[]; readonly pauses: readonly BridgedPause[] }[],
): readonly RunGroup[] {
  let firstRow = segment.firstRow;
  return parts.map(({ runs, pauses }, index) => {
    const last = runs.at(-1)!;
    const next = parts[index + 1]?.runs[0];
    const lastRow = next ? rowBefore(recording, last, (last.endS + next.startS) / 2) : segment.lastRow;
    const rows = { firstRow, lastRow };
    const notices = pauses.length === 0 ? [] : [pausesBridged(pauses)];
    firstRow = lastRow + 1;
    return { runs, startS: runs[0]!.startS, endS: last.endS, segment, rows, notices };
  });
}

function rowBefore(recording: Recording, run: Run, atS: number): number {
  let row = run.lastRow;
  while (row + 1 < recording.rows && recording.timeS[row + 1]! <= atS) row++;
  return row;
}
