import { button, element } from "./element.ts";

/** What is shown of the logbook. */
export type ViewName = "flights" | "timer" | "trends" | "season";
const VIEWS: readonly (readonly [ViewName, string])[] = [
  ["flights", "Flights"],
  ["timer", "Timer"],
  ["trends", "Trends"],
  ["season", "Season report"],
];

/** The views as buttons, the one shown pressed. */
export function viewChoice(shown: ViewName, choose: (view: ViewName) => void): HTMLElement {
  const views = VIEWS.map(([view, words]) =>
    button(words, () => choose(view), { "aria-pressed": String(view === shown) }),
  );
  return element("div", { class: "buttons", role: "group", "aria-label": "Of the logbook" }, ...views);
}

/** Whose flights. */
export function aircraftChoice(
  names: readonly string[],
  chosen: string | null,
  choose: (name: string) => void,
): HTMLElement {
  const select = element("select", { id: "book-aircraft" });
  for (const name of names) select.append(element("option", { value: name }, name));
  select.value = chosen ?? "";
  select.addEventListener("change", () => choose(select.value));
  return element("p", {}, element("label", { for: "book-aircraft" }, "Aircraft "), select);
}
