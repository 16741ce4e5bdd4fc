import { CHANNEL_NAMES, channelWords } from "../../../base/channels/index.ts";
import { type Answers, type CheckAnswer, NO_ANSWERS } from "../messages.ts";
import { button, element } from "./element.ts";
import { noticeItems } from "./notices.ts";
import { optionWords } from "./pageWords.ts";
import { clientWords } from "./words.ts";

/** The answers that one ready-made option stands for, added to what was answered before. */
export function withOption(answers: Answers, option: string): Answers {
  let all = answers;
  for (const [, name, value = ""] of option.matchAll(/--([a-z-]+)[ =](\S+)/g)) {
    const at = value.indexOf("=");
    const [channel, rest] = [value.slice(0, at), value.slice(at + 1)];
    if (name === "column") all = { ...all, columns: { ...all.columns, [channel]: rest } };
    if (name === "unit") all = { ...all, units: { ...all.units, [channel]: rest } };
    if (name === "rate") all = { ...all, rateHz: Number(value) };
    if (name === "cells") all = { ...all, cells: Number(value) };
    if (name === "pole-pairs") all = { ...all, polePairs: Number(value) };
    if (name === "delimiter") all = { ...all, delimiter: value };
    if (name === "decimal" && (value === "point" || value === "comma")) all = { ...all, decimalMark: value };
    if (name === "date-order" && (value === "dmy" || value === "mdy" || value === "ymd"))
      all = { ...all, dateOrder: value };
  }
  return all;
}

/** How the columns were read, with a picker for each; ready-made answers first where a question is open. */
export function columnsPanel(
  { columns, preview, check }: CheckAnswer,
  given: Answers | null,
  answer: (answers: Answers) => void,
): HTMLElement {
  const before = given ?? NO_ANSWERS;
  const { notices } = check.log;
  const isAsked = notices.some(({ severity }) => severity === "question");
  const questions = isAsked ? notices.filter(({ severity }) => severity !== "note") : [];
  const options = [...new Set(questions.flatMap((notice) => notice.options ?? []))].filter(
    (option) => !option.includes("CHANNEL="),
  );
  const ready = options.map((option) =>
    button(optionWords(option), () => answer(withOption(before, option))),
  );
  const pickers = columns.map(({ column, channel, header, why }) => {
    const picker = element("select", { "aria-label": `Column ${column}, ${header}: read as` });
    picker.append(
      element("option", { value: "" }, channel === null ? clientWords.leftAlone : channelWords(channel)),
    );
    for (const name of CHANNEL_NAMES) picker.append(element("option", { value: name }, channelWords(name)));
    return {
      column,
      picker,
      row: element("li", {}, element("strong", {}, `${column}. ${header}`), picker, element("span", {}, why)),
    };
  });
  const again = button(clientWords.readAgain, () => {
    const chosen = pickers.filter(({ picker }) => picker.value !== "");
    const named = Object.fromEntries(chosen.map(({ picker, column }) => [picker.value, `#${column}`]));
    answer({ ...before, columns: { ...before.columns, ...named } });
  });
  return element(
    "section",
    { class: "columns", "aria-label": "Columns of this log" },
    ...(questions.length === 0 ? [] : [noticeItems(questions)]),
    element("div", { class: "buttons" }, ...ready),
    ...(preview.length === 0 ? [] : [previewTable(preview)]),
    ...(columns.length === 0
      ? []
      : [element("ol", { class: "pickers" }, ...pickers.map(({ row }) => row)), again]),
  );
}

function previewTable(rows: CheckAnswer["preview"]): HTMLElement {
  const lines = rows
    .slice(0, 8)
    .map((cells) =>
      element("tr", {}, ...cells.slice(0, 30).map((cell) => element("td", {}, cell.slice(0, 60)))),
    );
  const table = element("table", {}, element("caption", {}, "First rows"), element("tbody", {}, ...lines));
  return element("div", { class: "scroll", role: "group", tabindex: "0", "aria-label": "First rows" }, table);
}
