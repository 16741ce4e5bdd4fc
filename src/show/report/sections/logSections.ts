import { channelFacts, channelWords } from "../../../base/channels/index.ts";
import { LISTED_LINES, linesText, type Notice } from "../../../base/notices/index.ts";
import { minutesAndSeconds, plainNumber, unitText } from "../../../base/quantity/index.ts";
import type { CheckedLogWithRows } from "../../../flight/check/index.ts";
import type { Recording } from "../../../log/recording/index.ts";
import { html, type Markup, NOTHING, shortened, visibleText } from "../../charts/index.ts";
import {
  dialectSentence,
  LINES_SUMMARY,
  leftAloneWords,
  moreWords,
  NOTHING_REPAIRED,
  REPAIR_WORDS,
  SEVERITY_WORDS,
  seconds,
} from "../sentences.ts";

const LONGEST_HEADER = 40;
const MOST_LISTED = 100;

/** How each column was read, and why. */
export function columnsSection({ check, readLog }: CheckedLogWithRows): Markup {
  const { channels, dialect } = check.log;
  const rows = channels.map(
    ({ channel, header, column, unit, why }) =>
      html`<tr><th scope="row">${channelWords(channel)}</th><td>${longText(header)}</td><td>${column}</td><td>${unitText(unit)}</td><td>${why}</td></tr>`,
  );
  const left = (readLog?.columns ?? []).filter((column) => column.channel === null);
  const table =
    rows.length === 0
      ? NOTHING
      : html`<div class="scroll" role="group" tabindex="0" aria-label="Columns, table"><table class="wide-words"><thead><tr><th scope="col">Quantity</th><th scope="col">Header in the log</th><th scope="col">Column</th><th scope="col">Unit</th><th scope="col">Why</th></tr></thead><tbody>${rows}</tbody></table></div>`;
  if (dialect === null && rows.length === 0 && left.length === 0) return NOTHING;
  const words = dialect === null ? NOTHING : html`<p>${dialectSentence(dialect)}</p>`;
  return html`<section aria-labelledby="columns"><h2 id="columns">How each column was read</h2>${words}${table}${leftAlone(left)}</section>`;
}

function leftAlone(
  left: readonly { readonly header: string; readonly column: number; readonly why: string }[],
): Markup {
  if (left.length === 0) return NOTHING;
  const items = left
    .slice(0, MOST_LISTED)
    .map(({ header, column, why }) => html`<li><b>${longText(header)}</b> (column ${column}): ${why}</li>`);
  return html`<details><summary>${leftAloneWords(left.length)}</summary><ul>${items}</ul>${more(left.length)}</details>`;
}

/** Text of any length from a log: short ones as they are, long ones cut with the whole text one step away. */
export function longText(text: string): Markup {
  const { short, isCut } = shortened(visibleText(text), LONGEST_HEADER);
  return isCut ? html`<details class="long"><summary>${short}</summary>${text}</details>` : html`${text}`;
}

/** What was repaired, left out or doubtful, with file lines. */
export function repairsSection({ check, recording }: CheckedLogWithRows): Markup {
  const notices = check.log.notices;
  const isClean = notices.length === 0 && (recording?.repairs.length ?? 0) === 0;
  const list = isClean ? html`<p>${NOTHING_REPAIRED}</p>` : noticeList(notices);
  const tables = recording === null ? NOTHING : html`${holesTable(recording)}${repairsTable(recording)}`;
  return html`<section aria-labelledby="repairs"><h2 id="repairs">What was repaired or left out</h2>${list}${tables}</section>`;
}

/** Notices with their weight in words, count and lines, and the options that settle a question. */
export function noticeList(notices: readonly Notice[]): Markup {
  const items = notices.slice(0, MOST_LISTED).map((notice) => {
    const options = (notice.options ?? []).map((option) => html`<li><code>${option}</code></li>`);
    const settle = options.length === 0 ? NOTHING : html`<ul class="options">${options}</ul>`;
    return html`<li class="notice"><b>${SEVERITY_WORDS[notice.severity]}</b> ${notice.text}${noticeLines(notice)}${settle}</li>`;
  });
  return html`<ul class="notices">${items}</ul>${more(notices.length)}`;
}

/** A sentence names three lines at most. */
const LINES_IN_A_SENTENCE = 3;

/** The file lines of a notice: beside it when few and not said yet, else one step away. */
function noticeLines({ lines, count, text }: Notice): Markup {
  if (lines === undefined || lines.length === 0) return NOTHING;
  const words = linesText(lines, Math.max(count ?? 0, lines.length), LISTED_LINES);
  if (lines.length > LINES_IN_A_SENTENCE)
    return html`<details class="lines"><summary>${LINES_SUMMARY}</summary>${words}</details>`;
  return /\blines? \d/.test(text) ? NOTHING : html` <span class="quiet">(${words})</span>`;
}

function holesTable({ holes, lineOfRow }: Recording): Markup {
  if (holes.length === 0) return NOTHING;
  const rows = holes.slice(0, MOST_LISTED).map((hole) => {
    const length = hole.isUnknownLength ? "not known" : seconds(hole.endS - hole.startS);
    return html`<tr><th scope="row">${minutesAndSeconds(hole.startS)} to ${minutesAndSeconds(hole.endS)}</th><td>${length}</td><td>${lineOfRow(hole.rowBefore)}</td><td>${lineOfRow(hole.rowAfter)}</td></tr>`;
  });
  return html`<div class="scroll" role="group" tabindex="0" aria-label="Holes"><table><caption>Stretches without usable rows</caption><thead><tr><th scope="col">Time, min:s</th><th scope="col">Length</th><th scope="col">Last line before</th><th scope="col">First line after</th></tr></thead><tbody>${rows}</tbody></table></div>${more(holes.length)}`;
}

function repairsTable({ repairs }: Recording): Markup {
  if (repairs.length === 0) return NOTHING;
  const rows = repairs.slice(0, MOST_LISTED).map(({ line, channel, kind, value }) => {
    const said = `${plainNumber(value)} ${unitText(channelFacts(channel).unit)}`;
    return html`<tr><th scope="row">${line}</th><td>${channelWords(channel)}</td><td>${said}</td><td>${REPAIR_WORDS[kind]}</td></tr>`;
  });
  return html`<div class="scroll" role="group" tabindex="0" aria-label="Values left out"><table class="wide-words"><caption>Values left out, each treated as missing</caption><thead><tr><th scope="col">File line</th><th scope="col">Quantity</th><th scope="col">The log said</th><th scope="col">Why left out</th></tr></thead><tbody>${rows}</tbody></table></div>${more(repairs.length)}`;
}

function more(count: number): Markup {
  return count > MOST_LISTED ? html`<p>${moreWords(count - MOST_LISTED)}</p>` : NOTHING;
}
