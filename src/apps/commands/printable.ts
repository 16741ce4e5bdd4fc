/**
 * Control characters other than newline and tab, marks that turn the reading direction, invisible
 * separators and lone halves of a pair: a log could use them to rewrite what the terminal shows.
 */
const UNPRINTABLE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the purpose
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u061C\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]|\p{Cs}/gu;

/**
 * Text that is harmless to print: each unprintable character is written as `\uXXXX`. Inside JSON text
 * that is the same string, so the result of JSON.stringify stays valid and unchanged in meaning.
 */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, (character) => escapeOf(character));
}

function escapeOf(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}

/** One line: line breaks and tabs become spaces. */
export function oneLine(text: string): string {
  return printable(text.replace(/\s+/g, " ").trim());
}
