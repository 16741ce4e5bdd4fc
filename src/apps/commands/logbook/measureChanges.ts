import { isKnown, type Quantity, quantityText } from "../../../base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_WORDS,
  type MeasureName,
  type Measures,
} from "../../../flight/analysis/index.ts";
import { logbookSentences } from "./sentences.ts";

const MOST_SHOWN = 6;
/** Two engines' fits agree to some 4e-11 of a number. */
const ENGINES = 1e-9;

/** One measure that a recheck gives another value, interval or reason. */
export interface MeasureChange {
  readonly measure: MeasureName;
  readonly before: Quantity;
  readonly after: Quantity;
}

export function measureChanges(before: Measures, after: Measures): readonly MeasureChange[] {
  return MEASURE_NAMES.filter((name) => !isSame(before[name], after[name])).map((measure) => ({
    measure,
    before: before[measure],
    after: after[measure],
  }));
}

/** A flight that a browser's page added has the last digits of that browser's exp and log: they are no change. */
function isSame(before: Quantity, after: Quantity): boolean {
  if (!isKnown(before) || !isKnown(after)) return JSON.stringify(before) === JSON.stringify(after);
  const [was, now] = [before, after].map(({ value, low, high }) => [value, low, high]);
  const size = Math.max(...(was ?? []).map((one) => Math.abs(one ?? 0)));
  const isNear = was?.every((one, at) => isNearTo(one, now?.[at] ?? null, ENGINES * size)) ?? false;
  const rest = (quantity: Quantity): string => JSON.stringify({ ...quantity, value: 0, low: 0, high: 0 });
  return isNear && rest(before) === rest(after);
}

function isNearTo(one: number | null, other: number | null, within: number): boolean {
  return one === null || other === null ? one === other : Math.abs(one - other) <= within;
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
