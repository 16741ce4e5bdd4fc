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
  new: { summary: "start an aircraft file, with comments and its schema", load: () => import("./new.ts") },
  demo: { summary: "analyse the invented season and write its reports", load: () => import("./demo.ts") },
};

export function isCommand(name: string): boolean {
  return Object.hasOwn(COMMANDS, name);
}
