import type { CommandDefinition } from "./commandDefinition.ts";

interface CommandEntry {
  /** One line for the list of commands. */
  readonly summary: string;
  readonly load: () => Promise<{ readonly command: CommandDefinition }>;
}

/** Every command; its code is loaded only when it is called. */
export const COMMANDS: Readonly<Record<string, CommandEntry>> = {
  check: {
    summary: "what one log says, held against the plan and the limits",
    load: () => import("./check.ts"),
  },
  columns: {
    summary: "how each column of a log is read, and what would force it",
    load: () => import("./columns.ts"),
  },
  plan: { summary: "the budget that follows from what is fitted", load: () => import("./plan.ts") },
  swap: { summary: "another propeller, pack or day: before and after", load: () => import("./swap.ts") },
  add: { summary: "add logs to the logbook, each flight once", load: () => import("./add.ts") },
  trend: { summary: "what creeps or jumps from flight to flight", load: () => import("./trend.ts") },
  list: { summary: "the flights of the logbook", load: () => import("./list.ts") },
  show: { summary: "everything the logbook keeps of one flight", load: () => import("./show.ts") },
  edit: { summary: "change what the pilot said of a flight", load: () => import("./edit.ts") },
  remove: { summary: "take flights out of the logbook", load: () => import("./remove.ts") },
  undo: { summary: "take the last change of the logbook back", load: () => import("./undo.ts") },
  recheck: { summary: "analyse every log again and say what changed", load: () => import("./recheck.ts") },
  export: { summary: "write the flights to a file", load: () => import("./export.ts") },
  verify: { summary: "name every damaged file of the logbook", load: () => import("./verify.ts") },
  timer: { summary: "a flight timer from the logged flights", load: () => import("./timer.ts") },
  season: { summary: "timer, trends, packs and every flight on one page", load: () => import("./season.ts") },
  page: {
    summary: "the page for logs and logbook: in your browser, or as one file",
    load: () => import("./page.ts"),
  },
  new: { summary: "start an aircraft file, with comments and its schema", load: () => import("./new.ts") },
  demo: { summary: "analyse the invented season and write its reports", load: () => import("./demo.ts") },
};

export function isCommand(name: string): boolean {
  return Object.hasOwn(COMMANDS, name);
}
