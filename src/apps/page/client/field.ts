import { element } from "./element.ts";

let made = 0;
/** An id that no report uses. */
export function freshId(): string {
  made += 1;
  return `field-${made}`;
}

/** A labelled line of a form with its help and a place for what is wrong with it. */
export interface Field {
  readonly root: HTMLElement;
  readonly input: HTMLInputElement | HTMLSelectElement;
  /** Shows what is wrong in place, or nothing. */
  readonly fault: (words: string | null) => void;
}

export interface FieldWords {
  readonly label: string;
  readonly unit?: string;
  readonly help?: string;
}

export function field({ label, unit = "", help = "" }: FieldWords, input: Field["input"]): Field {
  const id = freshId();
  const wrong = element("p", { class: "wrong", id: `${id}-wrong`, hidden: "" });
  const helpLine = element("p", { class: "help", id: `${id}-help` }, help);
  const described = [help === "" ? [] : [`${id}-help`], [`${id}-wrong`]].flat().join(" ");
  input.id = id;
  input.setAttribute("aria-describedby", described);
  const root = element(
    "div",
    { class: "field" },
    element("label", { for: id }, label),
    element(
      "div",
      { class: "entry" },
      input,
      ...(unit === "" ? [] : [element("span", { class: "unit" }, unit)]),
    ),
    ...(help === "" ? [] : [helpLine]),
    wrong,
  );
  const fault = (words: string | null): void => {
    wrong.textContent = words ?? "";
    wrong.hidden = words === null;
    if (words === null) input.removeAttribute("aria-invalid");
    else input.setAttribute("aria-invalid", "true");
  };
  return { root, input, fault };
}

export function textInput(value: string, isNumber: boolean, list: string | null = null): HTMLInputElement {
  const input = element("input", {
    type: "text",
    inputmode: isNumber ? "decimal" : null,
    autocomplete: "off",
    spellcheck: "false",
    list,
  });
  input.value = value;
  return input;
}

/** A number as a person writes it, with point or comma; null when empty, NaN for anything else. */
export function typedNumber(text: string): number | null {
  const bare = text.trim().replace("−", "-");
  if (bare === "") return null;
  return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(bare) ? Number(bare.replace(",", ".")) : Number.NaN;
}
