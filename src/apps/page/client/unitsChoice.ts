import type { DisplayUnits } from "../../../base/quantity/index.ts";
import { element, placeOf } from "./element.ts";
import type { Session } from "./session.ts";
import { clientWords } from "./words.ts";

const KEY = "tallywatt-units";

/** The choice of display units; the browser remembers it where it may. */
export function unitsChoice(session: Session): void {
  const select = placeOf("units");
  if (!(select instanceof HTMLSelectElement)) throw new Error("the page has no choice of units");
  session.units = unitsOf(remembered());
  select.value = session.units;
  select.addEventListener("change", () => {
    session.units = unitsOf(select.value);
    try {
      localStorage.setItem(KEY, session.units);
    } catch {
      // A page that may store nothing asks again next time.
    }
  });
}

/** Where other units are chosen: in which ones reports are all the same. */
export function unitsNote(units: DisplayUnits): readonly HTMLElement[] {
  return units === "metric" ? [] : [element("p", { class: "quiet" }, clientWords.reportsAreMetric)];
}

function unitsOf(text: string | null): DisplayUnits {
  return text === "imperial" ? "imperial" : "metric";
}

function remembered(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
