import { channelWords, isChannelName } from "../../../base/channels/index.ts";
import { capital } from "../../../base/words/index.ts";

const named = (channel: string): string => (isChannelName(channel) ? channelWords(channel) : channel);
export const DELIMITERS: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", tab: "tabs" };
export const DATES: Readonly<Record<string, string>> = {
  dmy: "day, month, year",
  mdy: "month, day, year",
  ymd: "year, month, day",
};

type Words = (...parts: readonly string[]) => string;

/**
 * What to do on the page, for everything that a sentence would have typed: the one place that turns options of
 * the command line into the page's own words. The longest pattern of a kind comes first.
 */
const WAYS: readonly (readonly [RegExp, Words])[] = [
  [/Give the rows per second, as in --rate 10\./g, () => "Type the rows a second under the columns."],
  [
    /If so, give --decimal comma --delimiter ,/g,
    () => "If so, choose decimal comma and commas between cells.",
  ],
  [/Name columns by number, as in --column time=#1\./g, () => "Say for each column what it is."],
  [
    /(Say how many cells the pack has): --cells \d+ or --cells \d+\./g,
    (say) => `${say}, in the field under the columns.`,
  ],
  [
    /For each flight's own report write this page with --with-flights, or use tallywatt check LOG --report\./g,
    () => "For a flight's own report open it in the logbook.",
  ],
  [/tallywatt remove \S+ --yes, then add its log again/g, () => "remove it here, then keep its log again"],
  [
    /tallywatt recheck --refit brings it along/g,
    () => "recheck with refit on the command line brings it along",
  ],
  [/--column CHANNEL=#(\d+)/g, (column) => `a choice for column ${column}`],
  [/--column (\w+)=#(\d+)/g, (channel, column) => `column ${column} is the ${named(channel ?? "")}`],
  [
    /--column (\w+)=(?:HEADER|…)/g,
    (channel) => `the picker of the column that is the ${named(channel ?? "")}`,
  ],
  [/--column/g, () => "the pickers under How the columns are read"],
  [/--unit (\w+)=(\S+?)(?=[.,;]?(?:\s|$))/g, (channel, unit) => `the ${named(channel ?? "")} is in ${unit}`],
  [/--rate ([\d.]*\d)/g, (rate) => `${rate} rows a second`],
  [/--cells (\d+)/g, (cells) => `${cells} cells`],
  [/--cells(?: N)?/g, () => "the cells of the aircraft"],
  [/--pole-pairs (\d+)/g, (pairs) => `${pairs} pole pairs`],
  [/--decimal (point|comma)/g, (mark) => `decimal ${mark},`],
  [/--delimiter (tab|[,;])/g, (sign) => `${DELIMITERS[sign ?? ""]} between cells`],
  [/--date-order (dmy|mdy|ymd)/g, (order) => `dates are ${DATES[order ?? ""]}`],
  [/state (?:it )?with --(?:ambient C|start-pct N)/g, () => "state it when you keep the flight"],
  [/--ambient(?: C)?/g, () => "the air temperature of the flight"],
  [/--start-pct(?: N)?/g, () => "the charge at the start of the flight"],
  [/--put-back(?: MAH)?/g, () => "the flight's put-back"],
  [/is meant: --pack [^`]+/g, () => "is meant, say so in the flight's facts"],
  [/--flown is the time of one flight/g, () => "A time by your own watch is that of one flight"],
  [/--flown/g, () => "a time by your own watch"],
  [/with --log LOG/g, () => "in the logbook"],
  [/--again/g, () => "Add it all the same"],
  [/with --aircraft(?: FILE)?/g, () => "at the place Aircraft"],
  [/--aircraft FILE/g, () => "choose one at the place Aircraft"],
  [/, then: tallywatt edit FLIGHT.*/g, () => ", then edit the flight in the logbook."],
  [/tallywatt edit FLIGHT --propeller DxP/g, () => "edit them in the logbook"],
  [/tallywatt (?:new \S+)/g, () => "the place Aircraft"],
  [/tallywatt add LOG/g, () => "drop a log and keep it"],
  [/tallywatt list/g, () => "see the logbook"],
];

/** A sentence of the core as it reads on the page. */
export function pageWords(text: string): string {
  if (!/--[a-z]|tallywatt [a-z]/.test(text)) return text;
  return WAYS.reduce(
    (words, [pattern, say]) => words.replace(pattern, (_, ...parts: string[]) => say(...parts)),
    text,
  );
}

/** A ready-made answer as a button says it. */
export function optionWords(option: string): string {
  const words = pageWords(option);
  const parts = words.replace(/,? (?=column \d+ is)/g, ", ").replace(/,$/, "");
  return capital(parts);
}

/** The same for everything that a report says, node by node; code and scripts stay. */
export function putPageWords(root: Node): void {
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const { textContent: text, parentElement: parent } = node;
    if (text === null || parent === null || parent.tagName === "SCRIPT") continue;
    const words = pageWords(text);
    if (words !== text) node.textContent = words;
  }
}
