import {
  displayedQuantity,
  displayedUnit,
  fieldNumber,
  isKnown,
  minutesAndSeconds,
  quantityText,
  unitText,
} from "../../../base/quantity/index.ts";
import { MEASURE_WORDS } from "../../../flight/analysis/index.ts";
import type { MeasureName } from "../../../flight/analysis/measures.ts";
import type { ListedFlight, ListResult } from "../../../season/logbook/index.ts";
import { button, element } from "./element.ts";
import { factsForm } from "./factsForm.ts";
import type { Session } from "./session.ts";
import { inBackground, tell } from "./tell.ts";
import { clientWords } from "./words.ts";

const SHOWN: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minCellV", "controllerPeakC"];

/** What the flights are shown with. */
export interface FlightsShown {
  readonly session: Session;
  readonly packs: readonly string[];
  readonly open: (flight: string) => void;
  /** Hears that a flight was changed or removed. */
  readonly changed: (flight: string) => void;
}

/** The names of the packs that flew. */
export function packsOf(flights: readonly ListedFlight[]): readonly string[] {
  return [...new Set(flights.flatMap(({ given }) => given.pack ?? []))];
}

/** Every flight of the book, newest first, each with what can be done with it. */
export function bookFlights({ flights, damaged }: ListResult, shown: FlightsShown): HTMLElement {
  const items = flights.toReversed().map((flight) => flightItem(flight, shown));
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

function flightItem(flight: ListedFlight, shown: FlightsShown): HTMLElement {
  const name = flight.flight;
  const place = element("div", { class: "edit" });
  const open = button("Open", () => shown.open(name), { "aria-label": `Open the report of ${name}` });
  const facts = opener("Facts", `Facts of ${name}`, place, (leave) => editPart(flight, shown, leave));
  const remove = opener("Remove", `Remove ${name}`, place, (leave) => removePart(name, shown, leave));
  return element(
    "li",
    { "data-flight": name },
    element("h3", {}, name),
    element("p", { class: "quiet" }, [kindWords(flight), ...givenWords(flight, shown.session)].join(", ")),
    element("p", {}, flight.headline),
    element("p", { class: "numbers" }, ...SHOWN.flatMap((measure) => numberOf(flight, measure, shown))),
    element("div", { class: "buttons" }, open, facts, remove),
    place,
  );
}

/** A button that opens a part below the flight; `leave` takes it away and goes back to the button. */
function opener(
  words: string,
  label: string,
  place: HTMLElement,
  partOf: (leave: () => void) => readonly HTMLElement[],
): HTMLButtonElement {
  const own = button(words, () => {
    place.parentElement?.querySelector("[aria-expanded=true]")?.setAttribute("aria-expanded", "false");
    place.replaceChildren(...partOf(leave));
    own.setAttribute("aria-expanded", "true");
    place.querySelector<HTMLElement>("input, button")?.focus();
  });
  own.setAttribute("aria-label", label);
  own.setAttribute("aria-expanded", "false");
  const leave = (): void => {
    place.replaceChildren();
    own.setAttribute("aria-expanded", "false");
    own.focus();
  };
  return own;
}

function kindWords({ kind, complete, given, measures }: ListedFlight): string {
  const flown = given.flownS ?? measures.flightTimeS.value;
  const words =
    kind === "benchRun" ? "bench run" : flown === null ? "flight" : `flight of ${minutesAndSeconds(flown)}`;
  return complete ? words : `${words}, log not complete`;
}

/** What the pilot said of the flight, in words. */
function givenWords({ given }: ListedFlight, { units }: Session): readonly string[] {
  const { pack, propeller, ambientC, startPct, putBackMah, note } = given;
  const air = (celsius: number): string =>
    `${fieldNumber(celsius, "degC", units)} ${unitText(displayedUnit("degC", units))}`;
  return [
    ...(pack === null ? [] : [`pack ${pack}`]),
    ...(propeller === null ? [] : [`propeller ${propeller}`]),
    ...(ambientC === null ? [] : [air(ambientC)]),
    ...(startPct === null ? [] : [`started at ${startPct} %`]),
    ...(putBackMah === null ? [] : [`put back ${putBackMah} mAh`]),
    ...(note === null ? [] : [`“${note}”`]),
  ];
}

/** The number in the units chosen; beside it the whole one in its own unit. */
function numberOf(
  { measures }: ListedFlight,
  name: MeasureName,
  { session }: FlightsShown,
): readonly HTMLElement[] {
  const quantity = measures[name];
  if (!isKnown(quantity)) return [];
  const attributes = { "data-measure": name, "data-value": String(quantity.value) };
  const text = quantityText(displayedQuantity(quantity, session.units));
  return [element("span", attributes, `${MEASURE_WORDS[name]} ${text}`)];
}

function editPart(
  { flight, given }: ListedFlight,
  { session, packs, changed }: FlightsShown,
  leave: () => void,
): readonly HTMLElement[] {
  const form = factsForm(given, packs, session.units);
  const save = button("Save the facts", () => {
    const facts = form.read();
    if (facts === null) return tell(clientWords.correctFirst);
    const { putBackFlights: _, ...now } = facts;
    const changes = Object.fromEntries(
      Object.entries(now).filter(([key, value]) => value !== given[key as keyof typeof now]),
    );
    change(session.core.ask({ kind: "edit", flights: [flight], changes }), () => changed(flight));
  });
  const back = button("Leave as it is", leave);
  return [form.root, element("div", { class: "buttons" }, save, back)];
}

function removePart(
  flight: string,
  { session, changed }: FlightsShown,
  leave: () => void,
): readonly HTMLElement[] {
  const sure = button("Yes, remove it", () =>
    change(session.core.ask({ kind: "remove", flights: [flight] }), () => changed(flight)),
  );
  return [
    element("p", {}, clientWords.removeSure(flight)),
    element("div", { class: "buttons" }, sure, button("No", leave)),
  ];
}

/** Waits for a change and says what became of it. */
function change(asked: Promise<{ readonly text: string }>, changed: () => void): void {
  inBackground(async () => {
    tell((await asked).text);
    changed();
  });
}
