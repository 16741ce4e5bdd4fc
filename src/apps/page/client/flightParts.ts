import type { ListedFlight } from "../../../season/logbook/index.ts";
import { button, element } from "./element.ts";
import { factsForm } from "./factsForm.ts";
import type { Session } from "./session.ts";
import { inBackground, tell } from "./tell.ts";
import { clientWords } from "./words.ts";

/** What the flights are shown with. */
export interface FlightsShown {
  readonly session: Session;
  readonly packs: readonly string[];
  readonly open: (flight: string) => void;
  /** Hears that a flight was changed or removed. */
  readonly changed: (flight: string) => void;
}

/** A button that opens a part below the flight; `leave` takes it away and goes back to the button. */
export function opener(
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

/** The facts of a flight as lines to change. */
export function editPart(
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

/** Asks whether a flight is to go. */
export function removePart(
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
