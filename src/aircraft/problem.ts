import type { Notice } from "../base/notices/index.ts";

/** Something wrong in an aircraft file, before it becomes a notice. */
export interface Problem {
  readonly code: string;
  readonly line: number;
  readonly text: string;
}

/** Refusals in the order of the file. */
export function refusals(problems: readonly Problem[]): Notice[] {
  return [...problems]
    .sort((one, other) => one.line - other.line)
    .map(({ code, line, text }) => ({ code, severity: "refusal", text, count: 1, lines: [line] }));
}
