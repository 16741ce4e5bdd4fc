import { MEASURE_NAMES } from "../../../flight/analysis/measures.ts";
import type { FlightCheck } from "../../../flight/check/index.ts";
import { element } from "./element.ts";

/** Shows a report in place. The one door by which markup enters the page: parsed apart, nothing of it runs. */
export function showReport(place: HTMLElement, report: string, check: FlightCheck): void {
  const parsed = new DOMParser().parseFromString(withoutStyle(report), "text/html");
  const script = parsed.querySelector("body > script:not([data-chart])")?.textContent ?? "";
  const body = [...(parsed.querySelector("main")?.childNodes ?? [])];
  const foot = [...(parsed.querySelector("footer")?.childNodes ?? [])];
  place.replaceChildren(element("div", {}, ...body), element("div", { class: "foot" }, ...foot));
  carryValues(place, check);
  const live = element("script", {});
  live.textContent = script;
  place.append(live);
}

/** The page carries the report's style itself; a second one would only be refused by the page's policy. */
function withoutStyle(report: string): string {
  const start = report.indexOf("<style>");
  const end = report.indexOf("</style>");
  return start < 0 || end < start ? report : report.slice(0, start) + report.slice(end + "</style>".length);
}

/** The whole number beside each rounded one, so that none is lost on the way to the page. */
function carryValues(place: HTMLElement, check: FlightCheck): void {
  place.querySelectorAll<HTMLElement>(".flight").forEach((section, at) => {
    const measures = check.flights[at]?.measures;
    if (measures === undefined) return;
    const known = MEASURE_NAMES.filter((name) => measures[name].value !== null);
    const cells = section.querySelectorAll<HTMLElement>("table.wide-words tbody td.value");
    if (cells.length !== known.length) return;
    known.forEach((name, row) => {
      cells[row]?.setAttribute("data-measure", name);
      cells[row]?.setAttribute("data-value", String(measures[name].value));
    });
  });
}
