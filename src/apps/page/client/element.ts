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

export function button(words: string, act: () => void): HTMLButtonElement {
  const made = element("button", { type: "button" }, words);
  made.addEventListener("click", act);
  return made;
}

/** A place of the page by its id. */
export function placeOf(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no place ${id}`);
  return found;
}
