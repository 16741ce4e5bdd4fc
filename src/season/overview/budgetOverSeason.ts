import { median } from "../../base/statistics/index.ts";
import type { MeasureName } from "../../flight/analysis/index.ts";
import type { Judgement, Verdict } from "../../flight/judgement/index.ts";
import type { SeasonFlight } from "./place.ts";

/** One line of the plan, or one limit, over all flights it was held against. */
export interface BudgetOverSeason {
  readonly line: MeasureName;
  readonly against: Judgement["against"];
  readonly sense: Judgement["sense"];
  /** Key of the aircraft file. */
  readonly source: string;
  /** The number; the newest one where the fitted part changed. */
  readonly value: number;
  readonly unit: string;
  /** Measured over the season; null when no flight gives it. */
  readonly lowest: number | null;
  readonly median: number | null;
  readonly highest: number | null;
  /** The flight that came nearest to harm, or went farthest past: its place; null when none is known. */
  readonly worstPlace: number | null;
  readonly counts: Readonly<Record<Verdict, number>>;
}

/** A flight with its judgements. */
export interface JudgedFlight {
  readonly flight: SeasonFlight;
  readonly judgements: readonly Judgement[];
}

/**
 * Each line that the aircraft file gives a number for, over the season. Flights judged by another number than
 * the newest (another controller, another pack) are not mixed in.
 */
export function budgetOverSeason(judged: readonly JudgedFlight[]): readonly BudgetOverSeason[] {
  const lines = new Map<string, Place[]>();
  for (const { flight, judgements } of judged) {
    for (const judgement of judgements) {
      if (judgement.value === null) continue;
      const key = `${judgement.against} ${judgement.line} ${judgement.source}`;
      const places = lines.get(key) ?? [];
      places.push({ judgement, place: flight.place });
      lines.set(key, places);
    }
  }
  return [...lines.values()].map(overSeason);
}

interface Place {
  readonly judgement: Judgement;
  readonly place: number;
}

function overSeason(all: readonly Place[]): BudgetOverSeason {
  const { line, against, sense, source, value, measured } = newestOf(all).judgement;
  const own = all.filter(({ judgement }) => judgement.value === value);
  const known = own.flatMap(({ judgement, place }) =>
    judgement.measured.value === null ? [] : [{ at: judgement.measured.value, place }],
  );
  const values = known.map(({ at }) => at);
  return {
    line,
    against,
    sense,
    source,
    value: value ?? 0,
    unit: measured.unit,
    lowest: values.length === 0 ? null : Math.min(...values),
    median: values.length === 0 ? null : median(values),
    highest: values.length === 0 ? null : Math.max(...values),
    worstPlace: worstPlace(known, sense, value ?? 0),
    counts: countsOf(own),
  };
}

function newestOf(all: readonly Place[]): Place {
  const newest = all.at(-1);
  if (newest === undefined) throw new RangeError("a line of the budget without a judgement");
  return newest;
}

function worstPlace(
  known: readonly { readonly at: number; readonly place: number }[],
  sense: Judgement["sense"],
  value: number,
): number | null {
  const harm = (at: number) => (sense === "atMost" ? at : sense === "atLeast" ? -at : Math.abs(at - value));
  const [first, ...rest] = known;
  if (first === undefined) return null;
  return rest.reduce((worst, one) => (harm(one.at) > harm(worst.at) ? one : worst), first).place;
}

function countsOf(all: readonly Place[]): BudgetOverSeason["counts"] {
  const counts = { within: 0, close: 0, outside: 0, "not judged": 0 };
  for (const { judgement } of all) counts[judgement.verdict] += 1;
  return counts;
}
