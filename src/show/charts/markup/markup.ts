import { escapeHtml } from "./escape.ts";

/** Text that is already markup. Only `html` and `trusted` make one, so nothing gets in unescaped. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Content = Markup | string | number | null | readonly (Markup | string)[];

/** Markup from a template: strings and numbers are escaped, markup and lists of it are taken as they are. */
export function html(parts: TemplateStringsArray, ...contents: readonly Content[]): Markup {
  let text = parts[0] ?? "";
  contents.forEach((content, index) => {
    text += contentText(content) + (parts[index + 1] ?? "");
  });
  return new Markup(text);
}

/** Constant text of our own as markup (style, script, entities). Never for text from outside. */
export function trusted(text: string): Markup {
  return new Markup(text);
}

/** Several pieces in a row. */
export function joined(pieces: readonly Markup[], between = ""): Markup {
  return new Markup(pieces.map((piece) => piece.text).join(between));
}

export const NOTHING = new Markup("");

function contentText(content: Content): string {
  if (content === null) return "";
  if (content instanceof Markup) return content.text;
  if (typeof content === "string") return escapeHtml(content);
  if (typeof content === "number") return String(content);
  return content.map(contentText).join("");
}
