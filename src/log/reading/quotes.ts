/** Whether the quotes of a line close: `open` continues on the next line, `broken` has text after a closing quote. */
export type QuoteState = "closed" | "open" | "broken";

const QUOTE = '"';

/**
 * Follows RFC 4180 quoting along one line: a quote opens only at the start of a cell and closes before a
 * delimiter or the line's end; a doubled quote is a quote. `startsInside`: the line continues a quoted cell.
 */
export function quoteState(line: string, delimiter: string, startsInside: boolean): QuoteState {
  let at = 0;
  let isInside = startsInside;
  for (;;) {
    if (!isInside) {
      if (line[at] === QUOTE) {
        isInside = true;
        at++;
      } else {
        const next = line.indexOf(delimiter, at);
        if (next < 0) return "closed";
        at = next + delimiter.length;
      }
      continue;
    }
    const close = line.indexOf(QUOTE, at);
    if (close < 0) return "open";
    if (line[close + 1] === QUOTE) {
      at = close + 2;
      continue;
    }
    if (close + 1 === line.length) return "closed";
    if (!line.startsWith(delimiter, close + 1)) return "broken";
    isInside = false;
    at = close + 1 + delimiter.length;
  }
}

/** The line as its cells are cut: runs of blanks made one for a blank-delimited file, blanks before and after quotes dropped. */
export function tidyLine(line: string, delimiter: string): string {
  if (delimiter === " ") return line.trim().replace(/[ \t]+/g, " ");
  if (!line.includes(QUOTE)) return line;
  const escaped = delimiter === "|" ? "\\|" : delimiter;
  return line
    .replace(new RegExp(`(^|${escaped})[ ]{1,100}"`, "g"), '$1"')
    .replace(new RegExp(`"[ ]{1,100}(?=${escaped}|$)`, "g"), '"');
}
