/** Characters that change how the text around them is drawn, or that draw nothing at all. */
const HIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: making control characters visible is the point
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu;

const LONE_SURROGATE = /[\ud800-\udfff]/gu;
const LONGEST_TEXT = 2000;

/**
 * Text from a log or a person as it may be drawn: control, direction-changing and invisible
 * characters are spelled out ("⟨U+202E⟩"), line breaks and tabs become one space, half characters
 * become U+FFFD. Longer than 2000 characters is cut, with the count of what was left out.
 */
export function visibleText(text: string): string {
  const bounded = text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT) : text;
  const shown = bounded
    .replace(/\r\n|[\n\r\t]/g, " ")
    .replace(HIDDEN, spelledOut)
    .replace(LONE_SURROGATE, "\ufffd");
  const left = text.length - bounded.length;
  return left > 0 ? `${shown}… (${left} more characters)` : shown;
}

function spelledOut(character: string): string {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0");
  return `⟨U+${code}⟩`;
}

/** The first `longest` characters of a visible text, with an ellipsis when something was left out. */
export function shortened(
  text: string,
  longest: number,
): { readonly short: string; readonly isCut: boolean } {
  const characters = [...text];
  if (characters.length <= longest) return { short: text, isCut: false };
  return { short: `${characters.slice(0, longest - 1).join("")}…`, isCut: true };
}
