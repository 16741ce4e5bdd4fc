/** What the command tells the shell. */
export const EXIT = {
  done: 0,
  bug: 1,
  usage: 2,
  unusable: 3,
  choice: 4,
  cannotWrite: 5,
  interrupted: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Words for help and README. */
export const EXIT_WORDS: Readonly<Record<ExitCode, string>> = {
  0: "done (warnings allowed)",
  1: "our bug",
  2: "usage",
  3: "input unusable",
  4: "a choice is needed",
  5: "cannot write",
  130: "interrupted",
};

/** Of several logs the first of these that occurred is told. */
const ORDER: readonly ExitCode[] = [EXIT.bug, EXIT.cannotWrite, EXIT.unusable, EXIT.choice];

export function exitOfSeveral(codes: readonly ExitCode[]): ExitCode {
  return ORDER.find((code) => codes.includes(code)) ?? EXIT.done;
}
