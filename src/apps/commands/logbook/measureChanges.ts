import { type Quantity, quantityText } from "../../../base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_WORDS,
  type MeasureName,
  type Measures,
} from "../../../flight/analysis/index.ts";
import { logbookSentences } from "./sentences.ts";

const MOST_SHOWN = 6;

/** One measure that a recheck gives another value, interval or reason. */
export interface MeasureChange {
  readonly measure: MeasureName;
  readonly before: Quantity;
  readonly after: Quantity;
}

export function measureChanges(before: Measures, after: Measures): readonly MeasureChange[] {
  return MEASURE_NAMES.filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name])).map(
    (measure) => ({ measure, before: before[measure], after: after[measure] }),
  );
}

/** The changes that show in the digits a reader sees, old -> new; the others are counted. */
export function changeLines(changes: readonly MeasureChange[]): readonly string[] {
  const visible = changes.filter(({ before, after }) => quantityText(before) !== quantityText(after));
  const shown = visible.slice(0, MOST_SHOWN);
  const more = changes.length - shown.length;
  return [
    ...shown.map(({ measure, before, after }) =>
      logbookSentences.measureChanged(MEASURE_WORDS[measure], quantityText(before), quantityText(after)),
    ),
    ...(more > 0 ? [logbookSentences.moreMeasures(more)] : []),
  ];
}
