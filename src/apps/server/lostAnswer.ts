import type { BookChange, BookFiles } from "../../season/logbook/index.ts";

/** A change was sent and no answer came: it may have been made or not. */
export class LostAnswer extends Error {
  constructor(options: ErrorOptions) {
    super("no answer came to the change", options);
    this.name = "LostAnswer";
  }
}

/** True for files that are as the change leaves them; an index is made anew at will and says nothing. */
export function isMadeIn(files: BookFiles, { files: changes }: BookChange<unknown>): boolean {
  return changes.every(({ path, text }) => (text === null ? !files.has(path) : files.get(path) === text));
}
