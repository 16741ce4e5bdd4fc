import { visibleText } from "./visibleText.ts";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
  "`": "&#96;",
};

/** Text for an element's content or a double-quoted attribute: shown literally, never read as markup. */
export function escapeHtml(text: string): string {
  return visibleText(text).replace(/[&<>"'`]/g, (character) => ENTITIES[character] ?? "");
}

/**
 * A value as JSON for a data block inside a script element. Every "<" is written \u003c, so that
 * neither an end tag nor a comment can begin; the two line separators are written out too.
 */
export function embedJson(value: unknown): string {
  return JSON.stringify(value).replace(/[<>&\u2028\u2029]/g, unicodeEscape);
}

function unicodeEscape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}
