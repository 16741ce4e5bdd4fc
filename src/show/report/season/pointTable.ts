import { plainNumber } from "../../../base/quantity/index.ts";
import type { SeasonFlight, SeasonPoint } from "../../../season/overview/index.ts";
import { html, type Markup, NOTHING } from "../../charts/index.ts";
import { carriedNumber } from "../carried.ts";
import { figureText } from "./figureText.ts";
import { titleWithUnit } from "./flightFigure.ts";
import { flightRange } from "./flightWords.ts";
import type { FlightsContext } from "./seasonInput.ts";

/** One column of a table over flights. */
export interface PointColumn {
  readonly head: string;
  readonly unit: string;
  /** In rising order of place. */
  readonly points: readonly SeasonPoint[];
}

/** The flights that one row stands for. */
interface Row {
  readonly fromPlace: number;
  readonly toPlace: number;
}

/** The numbers of a chart, a row for every `groupedBy` neighbouring flights, behind a summary line. */
export function pointTable(
  name: string,
  caption: string,
  columns: readonly PointColumn[],
  { flights, groupedBy }: Pick<FlightsContext, "flights" | "groupedBy">,
): Markup {
  const groupOf = ({ fromPlace }: SeasonPoint): number => Math.floor(fromPlace / groupedBy);
  const heads = columns.map(({ head, unit }) => html`<th scope="col">${titleWithUnit(head, unit)}</th>`);
  const byGroup = columns.map(({ points }) => new Map(points.map((point) => [groupOf(point), point])));
  const rows = [...rowsOf(columns, groupOf)].map(([group, row]) => {
    const cells = columns.map(({ unit }, index) => cell(byGroup[index]?.get(group), unit));
    return html`<tr>${rowHead(row, flights)}${cells}</tr>`;
  });
  return html`<details class="table"><summary>${name} as a table</summary><div class="scroll" role="group" tabindex="0" aria-label="${name}, table"><table><caption>${caption}</caption><thead><tr><th scope="col">flight</th><th scope="col">day</th>${heads}</tr></thead><tbody>${rows}</tbody></table></div></details>`;
}

/** A row for every group that some column has a point in, from the first to the last flight that it holds. */
function rowsOf(
  columns: readonly PointColumn[],
  groupOf: (point: SeasonPoint) => number,
): readonly (readonly [number, Row])[] {
  const found = new Map<number, Row>();
  for (const point of columns.flatMap(({ points }) => points)) {
    const known = found.get(groupOf(point)) ?? point;
    found.set(groupOf(point), {
      fromPlace: Math.min(known.fromPlace, point.fromPlace),
      toPlace: Math.max(known.toPlace, point.toPlace),
    });
  }
  return [...found].sort(([one], [other]) => one - other);
}

function rowHead({ fromPlace, toPlace }: Row, flights: readonly SeasonFlight[]): Markup {
  const [from, to] = [flights[fromPlace], flights[toPlace]];
  if (from === undefined || to === undefined) throw new RangeError(`no flight at place ${fromPlace}`);
  return html`<th scope="row">${flightRange(from, to)}</th><td class="day">${from.day ?? "not known"}</td>`;
}

function cell(point: SeasonPoint | undefined, unit: string): Markup {
  const whole = point === undefined ? NOTHING : carriedNumber("point", point.value);
  return html`<td${whole}>${cellText(point, unit)}</td>`;
}

function cellText(point: SeasonPoint | undefined, unit: string): string {
  if (point === undefined) return "";
  const { value, low, high, flights } = point;
  if (flights > 1)
    return `${plainNumber(value)} (${plainNumber(low ?? value)} to ${plainNumber(high ?? value)})`;
  if (low === null && high === null) return plainNumber(value);
  return figureText({ value, low, high, unit, basis: "measured" });
}
