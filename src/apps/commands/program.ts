import { nearestWord } from "../../base/words/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { type Failure, usageFailure } from "./failure.ts";
import { commandHelp, programHelp } from "./help.ts";
import { parseCall, unknownOption } from "./parseCall.ts";
import { COMMANDS, isCommand } from "./registry.ts";
import { usageSentences } from "./sentences.ts";

/** What a command line asks for. */
export type Asked =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "call"; readonly command: CommandDefinition; readonly call: Call };

/** Reads the words after the program's name. Throws a usage Failure for what it does not understand. */
export async function readCommandLine(words: readonly string[], release: () => string): Promise<Asked> {
  const [name, ...rest] = commandFirst(words);
  if (name === undefined) throw usageFailure(programHelp());
  if (name === "--version") return { kind: "text", text: release() };
  if (name === "--help" || name === "-h") return { kind: "text", text: programHelp() };
  if (name === "help") return { kind: "text", text: await helpAbout(rest[0]) };
  if (name.startsWith("-")) throw unknownOption(name, ["--help", "--version"], null);
  const command = await loadCommand(name);
  if (asksForHelp(rest)) return { kind: "text", text: commandHelp(name, command) };
  return { kind: "call", command, call: parseCall(name, command, rest) };
}

/** Options may come before the command's name. */
function commandFirst(words: readonly string[]): readonly string[] {
  if (!words[0]?.startsWith("-")) return words;
  const at = words.findIndex((word) => isCommand(word));
  const name = words[at];
  return name === undefined ? words : [name, ...words.slice(0, at), ...words.slice(at + 1)];
}

async function helpAbout(name: string | undefined): Promise<string> {
  return name === undefined ? programHelp() : commandHelp(name, await loadCommand(name));
}

async function loadCommand(name: string): Promise<CommandDefinition> {
  const entry = isCommand(name) ? COMMANDS[name] : undefined;
  if (entry === undefined) throw unknownCommand(name);
  return (await entry.load()).command;
}

function unknownCommand(name: string): Failure {
  const names = Object.keys(COMMANDS);
  return usageFailure(usageSentences.unknownCommand(name, nearestWord(name, names), names));
}

function asksForHelp(words: readonly string[]): boolean {
  const end = words.indexOf("--");
  return words.slice(0, end < 0 ? words.length : end).some((word) => word === "--help" || word === "-h");
}
