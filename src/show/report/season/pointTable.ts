import { plainNumber } from "../../../base/quantity/index.ts";
import type { SeasonFlight, SeasonPoint } from "../../../season/overview/index.ts";
import { html, type Markup } from "../../charts/index.ts";
import { figureText } from "./figureText.ts";
import { titleWithUnit } from "./flightFigure.ts";
import { flightRange } from "./flightWords.ts";

/** One column of a table over flights. */
export interface PointColumn {
  readonly head: string;
  readonly unit: string;
  /** In rising order of place. */
  readonly points: readonly SeasonPoint[];
}

/** The numbers of a chart, a row a flight or a group of flights, behind a summary line. */
export function pointTable(
  name: string,
  caption: string,
  columns: readonly PointColumn[],
  flights: readonly SeasonFlight[],
): Markup {
  const heads = columns.map(({ head, unit }) => html`<th scope="col">${titleWithUnit(head, unit)}</th>`);
  const byPlace = columns.map(({ points }) => new Map(points.map((point) => [point.fromPlace, point])));
  const rows = placesOf(columns).map((point) => {
    const cells = columns.map(
      ({ unit }, index) => html`<td>${cellText(byPlace[index]?.get(point.fromPlace), unit)}</td>`,
    );
    return html`<tr>${rowHead(point, flights)}${cells}</tr>`;
  });
  return html`<details class="table"><summary>${name} as a table</summary><div class="scroll" role="group" tabindex="0" aria-label="${name}, table"><table><caption>${caption}</caption><thead><tr><th scope="col">flight</th><th scope="col">day</th>${heads}</tr></thead><tbody>${rows}</tbody></table></div></details>`;
}

/** Every place that some column has a point at. Groups of one chart start at the same places only by chance. */
function placesOf(columns: readonly PointColumn[]): readonly SeasonPoint[] {
  const found = new Map<number, SeasonPoint>();
  for (const { points } of columns) {
    for (const point of points) {
      const known = found.get(point.fromPlace);
      if (known === undefined || known.toPlace < point.toPlace) found.set(point.fromPlace, point);
    }
  }
  return [...found.values()].sort((one, other) => one.fromPlace - other.fromPlace);
}

function rowHead({ fromPlace, toPlace }: SeasonPoint, flights: readonly SeasonFlight[]): Markup {
  const [from, to] = [flights[fromPlace], flights[toPlace]];
  if (from === undefined || to === undefined) throw new RangeError(`no flight at place ${fromPlace}`);
  return html`<th scope="row">${flightRange(from, to)}</th><td>${from.day ?? "not known"}</td>`;
}

function cellText(point: SeasonPoint | undefined, unit: string): string {
  if (point === undefined) return "";
  const { value, low, high, flights } = point;
  if (flights > 1)
    return `${plainNumber(value)} (${plainNumber(low ?? value)} to ${plainNumber(high ?? value)})`;
  if (low === null && high === null) return plainNumber(value);
  return figureText({ value, low, high, unit, basis: "measured" });
}
