import type { Call } from "../commandDefinition.ts";
import { commandLine } from "../shellWord.ts";

/** The words that name the logbook of a call. */
export function bookWords(call: Call): readonly string[] {
  const book = call.text("book");
  return book === null ? [] : ["--book", book];
}

/** The command that takes the last change back, in the logbook of this call. */
export function undoLine(call: Call): string {
  return commandLine(["undo", ...bookWords(call)]);
}
