import { isKnown, minutesAndSeconds, quantityText } from "../../../base/quantity/index.ts";
import { MEASURE_WORDS } from "../../../flight/analysis/index.ts";
import type { MeasureName } from "../../../flight/analysis/measures.ts";
import type { ListedFlight, ListResult } from "../../../season/logbook/index.ts";
import { button, element } from "./element.ts";
import { factsForm } from "./factsForm.ts";
import { type Session, tell } from "./session.ts";
import { clientWords } from "./words.ts";

const SHOWN: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minCellV", "controllerPeakC"];

interface Acts {
  readonly open: (flight: string) => void;
  readonly changed: () => void;
}

/** Every flight of the book, newest first, each with what can be done with it. */
export function bookFlights(session: Session, { flights, damaged }: ListResult, acts: Acts): HTMLElement {
  const packs = [...new Set(flights.flatMap(({ given }) => given.pack ?? []))];
  const items = flights.toReversed().map((flight) => flightItem(session, flight, packs, acts));
  const lost = damaged.map(({ path, why }) => element("li", {}, `${path}: ${why}`));
  return element(
    "section",
    { "aria-labelledby": "book-flights" },
    element("h2", { id: "book-flights" }, "Flights"),
    ...(lost.length === 0
      ? []
      : [element("p", {}, clientWords.damaged(lost.length)), element("ul", {}, ...lost)]),
    element("ol", { class: "book-flights", reversed: "" }, ...items),
  );
}

function flightItem(
  session: Session,
  flight: ListedFlight,
  packs: readonly string[],
  acts: Acts,
): HTMLElement {
  const name = flight.flight;
  const edit = element("div", { class: "edit" });
  const change = button("Facts", () => showEdit(session, flight, packs, edit, acts), {
    "aria-label": `Facts of ${name}`,
    "aria-expanded": "false",
  });
  const remove = button("Remove", () => showRemove(session, name, edit, acts), {
    "aria-label": `Remove ${name}`,
  });
  const open = button("Open", () => acts.open(name), { "aria-label": `Open the report of ${name}` });
  return element(
    "li",
    { "data-flight": name },
    element("h3", {}, name),
    element("p", { class: "quiet" }, [kindWords(flight), ...givenWords(flight)].join(", ")),
    element("p", {}, flight.headline),
    element("p", { class: "numbers" }, ...SHOWN.flatMap((measure) => numberOf(flight, measure))),
    element("div", { class: "buttons" }, open, change, remove),
    edit,
  );
}

function kindWords({ kind, complete, given, measures }: ListedFlight): string {
  const flown = given.flownS ?? measures.flightTimeS.value;
  const words =
    kind === "benchRun" ? "bench run" : flown === null ? "flight" : `flight of ${minutesAndSeconds(flown)}`;
  return complete ? words : `${words}, log not complete`;
}

/** What the pilot said of the flight, in words. */
function givenWords({ given }: ListedFlight): readonly string[] {
  const { pack, propeller, ambientC, startPct, putBackMah, note } = given;
  return [
    ...(pack === null ? [] : [`pack ${pack}`]),
    ...(propeller === null ? [] : [`propeller ${propeller}`]),
    ...(ambientC === null ? [] : [`${ambientC} °C`]),
    ...(startPct === null ? [] : [`started at ${startPct} %`]),
    ...(putBackMah === null ? [] : [`put back ${putBackMah} mAh`]),
    ...(note === null ? [] : [`“${note}”`]),
  ];
}

function numberOf({ measures }: ListedFlight, name: MeasureName): readonly HTMLElement[] {
  const quantity = measures[name];
  if (!isKnown(quantity)) return [];
  const attributes = { "data-measure": name, "data-value": String(quantity.value) };
  return [element("span", attributes, `${MEASURE_WORDS[name]} ${quantityText(quantity)}`)];
}

function showEdit(
  { core }: Session,
  { flight, given }: ListedFlight,
  packs: readonly string[],
  place: HTMLElement,
  { changed }: Acts,
): void {
  const form = factsForm(given, packs);
  const save = button("Save the facts", () => {
    const facts = form.read();
    if (facts === null) return tell(clientWords.correctFirst);
    const { putBackFlights: _, ...now } = facts;
    const changes = Object.fromEntries(
      Object.entries(now).filter(([key, value]) => value !== given[key as keyof typeof now]),
    );
    core.ask({ kind: "edit", flights: [flight], changes }).then(
      ({ text }) => {
        tell(text);
        changed();
      },
      (error: unknown) => tell(error instanceof Error ? error.message : String(error)),
    );
  });
  const leave = button("Leave as it is", () => place.replaceChildren());
  place.replaceChildren(form.root, element("div", { class: "buttons" }, save, leave));
  form.root.querySelector("input")?.focus();
}

function showRemove({ core }: Session, flight: string, place: HTMLElement, { changed }: Acts): void {
  const sure = button("Yes, remove it", () => {
    core.ask({ kind: "remove", flights: [flight] }).then(
      ({ text }) => {
        tell(text);
        changed();
      },
      (error: unknown) => tell(error instanceof Error ? error.message : String(error)),
    );
  });
  const no = button("No", () => place.replaceChildren());
  place.replaceChildren(
    element("p", {}, clientWords.removeSure(flight)),
    element("div", { class: "buttons" }, sure, no),
  );
  sure.focus();
}
