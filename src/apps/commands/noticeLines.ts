import type { Notice } from "../../base/notices/index.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { oneLine } from "./printable.ts";

const MOST_OPTIONS = 3;

const WORDS: Readonly<Record<Notice["severity"], string>> = {
  note: "note",
  warning: "warning",
  question: "a choice is needed",
  refusal: "cannot be used",
};

/** A notice for standard error, at most five lines: who, how much it matters, the sentence, what to type. */
export function noticeLines(
  log: string,
  notice: Notice,
  retry: (option: string) => string,
): readonly string[] {
  const options = (notice.options ?? []).slice(0, MOST_OPTIONS);
  return [
    `${oneLine(log)}: ${WORDS[notice.severity]}: ${oneLine(notice.text)}`,
    ...options.map((option) => `    try: ${retry(option)}`),
  ];
}

const ORDER: readonly Notice["severity"][] = ["refusal", "question", "warning", "note"];

/** The gravest first; the same sentence once. */
export function inOrder(notices: readonly Notice[]): readonly Notice[] {
  const seen = new Set<string>();
  const once = notices.filter(({ text }) => !seen.has(text) && seen.add(text));
  return ORDER.flatMap((severity) => once.filter((notice) => notice.severity === severity));
}

/** "2 warnings and 1 note", "no warnings". */
export function noticeCount(notices: readonly Notice[]): string {
  const once = inOrder(notices);
  const counted = [...ORDER].flatMap((severity) => {
    const count = once.filter((notice) => notice.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? "" : "s"}`];
  });
  return counted.length === 0 ? "no warnings" : counted.join(" and ");
}

/** What notices tell the shell: a refusal, a question, or done. */
export function exitOfNotices(notices: readonly Notice[]): ExitCode {
  if (notices.some(({ severity }) => severity === "refusal")) return EXIT.unusable;
  if (notices.some(({ severity }) => severity === "question")) return EXIT.choice;
  return EXIT.done;
}
