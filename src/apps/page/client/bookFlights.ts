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
import { editPart, type FlightsShown, opener, removePart } from "./flightParts.ts";
import type { Session } from "./session.ts";
import { clientWords } from "./words.ts";

const SHOWN: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minCellV", "controllerPeakC"];

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
