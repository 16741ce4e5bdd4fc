import { placeOf } from "./element.ts";

export type PlaceName = "log" | "aircraft" | "logbook" | "swap";
const NAMES: readonly PlaceName[] = ["log", "aircraft", "logbook", "swap"];

/** What a place does when it comes into view and when it goes. */
export interface Place {
  readonly enter: () => void;
  readonly leave: () => void;
}

/** The places of the page: one is in view, the others wait hidden. */
export class Places {
  readonly #places = new Map<PlaceName, Place>();
  #open: PlaceName = "log";

  constructor() {
    for (const name of NAMES) buttonOf(name).addEventListener("click", () => this.go(name));
  }

  add(name: PlaceName, place: Place): void {
    this.#places.set(name, place);
  }

  get open(): PlaceName {
    return this.#open;
  }

  /** Shows a place and moves the focus to its heading, so that keys and readers go on from there. */
  go(name: PlaceName): void {
    if (name !== this.#open) {
      placeOf("status").textContent = "";
      this.#places.get(this.#open)?.leave();
      this.#open = name;
      for (const one of NAMES) {
        placeOf(one).hidden = one !== name;
        if (one === name) buttonOf(one).setAttribute("aria-current", "page");
        else buttonOf(one).removeAttribute("aria-current");
      }
      this.#places.get(name)?.enter();
    }
    placeOf(`${name}-title`).focus();
  }
}

function buttonOf(name: PlaceName): HTMLElement {
  return placeOf(`go-${name}`);
}
