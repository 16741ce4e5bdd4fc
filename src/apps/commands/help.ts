import type { CommandDefinition, OptionDefinition } from "./commandDefinition.ts";
import { EXIT_WORDS } from "./exitCodes.ts";
import { COMMANDS } from "./registry.ts";

const OPTION_COLUMN = 30;

/** Options that every command takes. */
export const COMMON_OPTIONS: readonly OptionDefinition[] = [
  { flags: "--debug", help: "show where in the program a failure arose" },
  { flags: "--no-color", help: "no bold letters (NO_COLOR and TERM=dumb do the same)" },
];

/** Help of the program as a whole: examples first, at most 60 lines. */
export function programHelp(): string {
  return [
    "tallywatt: what a flight log says about an electric model aircraft's power plan",
    "",
    "Examples:",
    "  tallywatt check flight.csv",
    "  tallywatt check flight.csv --aircraft tern.json --report",
    "  tallywatt new tern.json",
    "  tallywatt demo",
    "",
    "Commands:",
    ...Object.entries(COMMANDS).map(([name, { summary }]) => row(name, summary)),
    "",
    "Help of one command: tallywatt COMMAND --help. Version: tallywatt --version.",
    "",
    ...exitLines(),
    "",
    "Makers' limits, your club's safety code and local rules come before anything printed here.",
  ].join("\n");
}

/** Help of one command: examples first, at most 60 lines. */
export function commandHelp(name: string, command: CommandDefinition): string {
  const operands = command.operands.replace(/[<>]/g, "");
  return [
    `tallywatt ${name}: ${command.about}`,
    "",
    "Examples:",
    ...command.examples.flatMap(({ line, about }) => [`  ${line}`, `      ${about}`]),
    "",
    `Usage: tallywatt ${name} ${operands} [options]`,
    "",
    "Options:",
    ...[...command.options, ...COMMON_OPTIONS].map(({ flags, help }) => row(shownFlags(flags), help)),
    ...(command.notes ? ["", ...command.notes] : []),
    "",
    ...exitLines(),
  ].join("\n");
}

function shownFlags(flags: string): string {
  return flags.replace(/ \[(.*)\]/, "[=$1]").replace(/[<>]/g, "");
}

function row(left: string, right: string): string {
  return left.length + 2 >= OPTION_COLUMN
    ? `  ${left}  ${right}`
    : `  ${left.padEnd(OPTION_COLUMN - 2)}${right}`;
}

function exitLines(): readonly string[] {
  const words = Object.entries(EXIT_WORDS).map(([code, text]) => `${code} ${text}`);
  return [`Exit code: ${words.slice(0, 4).join(", ")},`, `           ${words.slice(4).join(", ")}`];
}
