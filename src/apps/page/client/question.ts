import { CHANNEL_NAMES, channelWords } from "../../../base/channels/index.ts";
import type { ColumnChoice } from "../../../log/reading/index.ts";
import { type Answers, type CheckAnswer, NO_ANSWERS } from "../messages.ts";
import { button, element } from "./element.ts";
import { type LogAnswers, logAnswers } from "./logAnswers.ts";
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
  const rows = columns.map((column) => columnRow(column, before));
  const whole: LogAnswers = logAnswers(before);
  const again = button(clientWords.readAgain, () => answer({ ...withRows(before, rows), ...whole.read() }));
  return element(
    "section",
    { class: "columns", "aria-label": "Columns of this log" },
    ...(questions.length === 0 ? [] : [noticeItems(questions)]),
    element("div", { class: "buttons" }, ...ready),
    ...(preview.length === 0 ? [] : [previewTable(preview)]),
    ...(columns.length === 0
      ? []
      : [element("ol", { class: "pickers" }, ...rows.map(({ row }) => row)), whole.place, again]),
  );
}

interface ColumnRow {
  readonly choice: ColumnChoice;
  readonly row: HTMLElement;
  readonly channel: HTMLSelectElement;
  readonly unit: HTMLInputElement;
}

/** One column: the guess with its reason, a picker to correct it, and a field for its unit. */
function columnRow(choice: ColumnChoice, before: Answers): ColumnRow {
  const { column, channel: guessed, header, why, unit: found } = choice;
  const forced = Object.entries(before.columns).find(([, at]) => at === `#${column}`)?.[0];
  const name = `Column ${column}, ${header}`;
  const channel = element("select", { "aria-label": `${name}: read as` });
  const guess = guessed === null ? clientWords.leftAlone : channelWords(guessed);
  channel.append(element("option", { value: "" }, guess));
  for (const one of CHANNEL_NAMES) channel.append(element("option", { value: one }, channelWords(one)));
  channel.value = forced ?? "";
  const unit = element("input", {
    type: "text",
    maxlength: "20",
    "aria-label": `${name}: unit`,
    placeholder: found ?? clientWords.unitPlace,
  });
  unit.value = before.units[forced ?? guessed ?? ""] ?? "";
  const picked = element("div", { class: "picked" }, channel, unit);
  const head = element("strong", {}, `${column}. ${header}`);
  return { choice, row: element("li", {}, head, picked, element("span", {}, why)), channel, unit };
}

/** A picker put back to its guess takes an earlier answer about that column away. */
function withRows(before: Answers, rows: readonly ColumnRow[]): Answers {
  const own = new Set(rows.map(({ choice }) => `#${choice.column}`));
  const kept = Object.entries(before.columns).filter(([, at]) => !own.has(at));
  const picked = rows.flatMap(({ channel, choice }) =>
    channel.value === "" ? [] : [[channel.value, `#${choice.column}`] as const],
  );
  const units = rows.flatMap(({ channel, choice, unit }) => {
    const name = channel.value === "" ? choice.channel : channel.value;
    return name === null || unit.value.trim() === "" ? [] : [[name, unit.value.trim()] as const];
  });
  return { ...before, columns: Object.fromEntries([...kept, ...picked]), units: Object.fromEntries(units) };
}

function previewTable(rows: CheckAnswer["preview"]): HTMLElement {
  const lines = rows
    .slice(0, 8)
    .map((cells) =>
      element("tr", {}, ...cells.slice(0, 30).map((cell) => element("td", {}, cell.slice(0, 60)))),
    );
  const width = Math.min(30, Math.max(...rows.map((cells) => cells.length)));
  const heads = Array.from({ length: width }, (_, at) => element("th", { scope: "col" }, String(at + 1)));
  const table = element(
    "table",
    {},
    element("caption", {}, clientWords.firstRows),
    element("thead", {}, element("tr", {}, ...heads)),
    element("tbody", {}, ...lines),
  );
  return element("div", { class: "scroll", role: "group", tabindex: "0", "aria-label": "First rows" }, table);
}
