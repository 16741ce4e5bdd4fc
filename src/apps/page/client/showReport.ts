import { element } from "./element.ts";
import { putPageWords } from "./pageWords.ts";

/** Lets the browser lay out, paint and hear its user between two parts of a report; a hidden page paints nothing. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    if (document.hidden) setTimeout(resolve, 0);
    else requestAnimationFrame(() => setTimeout(resolve, 0));
  });
}

/** The one door by which markup enters the page: parsed apart, nothing of it runs. */
function parsed(markup: string): Document {
  return new DOMParser().parseFromString(markup, "text/html");
}

/** Shows a part of markup in place. */
export function showView(place: HTMLElement, view: string): void {
  const { body } = parsed(view);
  putPageWords(body);
  place.replaceChildren(...body.childNodes);
}

/** Which report a place shows: one that is overtaken while it is put in stops. */
const shown = new WeakMap<HTMLElement, object>();

/** Takes the report out of a place. */
export function clearReport(place: HTMLElement): void {
  shown.set(place, {});
  place.replaceChildren();
}

/**
 * Shows a whole report in place, part by part, so that the page goes on hearing its user meanwhile. Resolves to
 * false when another report took its place.
 */
export async function showReport(place: HTMLElement, report: string): Promise<boolean> {
  const turn = {};
  shown.set(place, turn);
  const isOvertaken = (): boolean => shown.get(place) !== turn;
  const whole = parsed(withoutStyle(report));
  putPageWords(whole.body);
  const script = whole.querySelector("body > script:not([data-chart])")?.textContent ?? "";
  place.replaceChildren();
  const main = element("div");
  place.append(main);
  for (const part of [...(whole.querySelector("main")?.childNodes ?? [])]) {
    if (isOvertaken()) return false;
    if (part instanceof HTMLElement && part.matches(".flight")) await addPieces(main, part, isOvertaken);
    else main.append(part);
    await breath();
  }
  if (isOvertaken()) return false;
  place.append(element("div", { class: "foot" }, ...(whole.querySelector("footer")?.childNodes ?? [])));
  await breath();
  if (isOvertaken()) return false;
  const live = element("script");
  live.textContent = script;
  place.append(live);
  return true;
}

/** A flight is most of a report: its sections come in one by one. */
async function addPieces(main: HTMLElement, flight: HTMLElement, isOvertaken: () => boolean): Promise<void> {
  const pieces = [...flight.childNodes];
  flight.replaceChildren();
  main.append(flight);
  for (const piece of pieces) {
    if (isOvertaken()) return;
    flight.append(piece);
    if (piece instanceof HTMLElement) await breath();
  }
}

/** The page carries the report's style itself; a second one would only be refused by the page's policy. */
function withoutStyle(report: string): string {
  const start = report.indexOf("<style>");
  const end = report.lastIndexOf("</style>", report.indexOf("<body>"));
  return start < 0 || end < start ? report : report.slice(0, start) + report.slice(end + "</style>".length);
}
