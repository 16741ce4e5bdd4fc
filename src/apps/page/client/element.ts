/** Attributes as text; a null one is left out. Text goes in as text: nothing here reads markup. */
export type Attributes = Readonly<Record<string, string | null>>;

export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) if (value !== null) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

export function button(words: string, act: () => void, attributes: Attributes = {}): HTMLButtonElement {
  const made = element("button", { type: "button", ...attributes }, words);
  made.addEventListener("click", act);
  return made;
}

/** A place of the page by its id. */
export function placeOf(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no place ${id}`);
  return found;
}

export function inputOf(id: string): HTMLInputElement {
  const found = placeOf(id);
  if (!(found instanceof HTMLInputElement)) throw new Error(`${id} is no field`);
  return found;
}

/** Pause in typing after which what was typed counts, ms. */
const TYPING_MS = 200;

export function pause(forMs: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, forMs));
}

/** Calls `act` once typing has stopped. */
export function settled(act: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, TYPING_MS);
  };
}
