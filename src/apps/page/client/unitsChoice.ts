import { placeOf } from "./element.ts";
import type { Session } from "./session.ts";

const KEY = "tallywatt-units";

/** The choice of display units; the browser remembers it where it may. */
export function unitsChoice(session: Session): void {
  const select = placeOf("units");
  if (!(select instanceof HTMLSelectElement)) throw new Error("the page has no choice of units");
  select.value = remembered() === "imperial" ? "imperial" : "metric";
  session.units = select.value === "imperial" ? "imperial" : "metric";
  select.addEventListener("change", () => {
    session.units = select.value === "imperial" ? "imperial" : "metric";
    try {
      localStorage.setItem(KEY, session.units);
    } catch {
      // A page that may store nothing asks again next time.
    }
  });
}

function remembered(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
