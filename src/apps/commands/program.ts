import { Command, CommanderError } from "commander";
import { nearestWord } from "../../base/words/index.ts";
import type { Call, CommandDefinition, OptionDefinition } from "./commandDefinition.ts";
import { type Failure, usageFailure } from "./failure.ts";
import { COMMON_OPTIONS, commandHelp, programHelp } from "./help.ts";
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

function parseCall(name: string, definition: CommandDefinition, words: readonly string[]): Call {
  const options = [...definition.options, ...COMMON_OPTIONS];
  const parser = parserOf(name, definition, options);
  try {
    parser.parse(withBareValues(words, options), { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError) throw usageOf(error, name, options);
    throw error;
  }
  return callOf(name, parser, options);
}

function parserOf(
  name: string,
  { operands }: CommandDefinition,
  options: readonly OptionDefinition[],
): Command {
  const parser = new Command(name).exitOverride().helpOption(false).showSuggestionAfterError(false);
  parser.configureOutput({ writeOut: () => {}, writeErr: () => {} }).allowExcessArguments(false);
  if (operands !== "") parser.arguments(operands);
  for (const { flags, help } of options) {
    if (flags.includes(" ")) parser.option(flags, help, collect, [] as string[]);
    else parser.option(flags, help);
  }
  return parser.action(() => {});
}

function collect(value: string, before: readonly string[]): string[] {
  return [...before, value];
}

/** An option whose value comes only with "=" must not take the next word as its value. */
function withBareValues(words: readonly string[], options: readonly OptionDefinition[]): readonly string[] {
  const bare = options.filter(({ flags }) => flags.includes(" [")).map(({ flags }) => longName(flags));
  const end = words.indexOf("--");
  return words.map((word, index) => (bare.includes(word) && (end < 0 || index < end) ? `${word}=` : word));
}

function longName(flags: string): string {
  return flags.split(" ")[0] ?? flags;
}

function callOf(name: string, parser: Command, options: readonly OptionDefinition[]): Call {
  const values = parser.opts<Record<string, unknown>>();
  const given = new Map<string, readonly string[]>();
  for (const option of parser.options) {
    const value = values[option.attributeName()];
    const texts = Array.isArray(value) ? value.map(String) : isGiven(value, option.negate) ? [""] : [];
    if (texts.length > 0) given.set(option.name(), texts);
  }
  refuseSwallowedOptions(given, options);
  const texts = (option: string): readonly string[] =>
    given.get(option.replace(/^no-/, "")) ?? given.get(option) ?? [];
  return {
    name,
    operands: parser.args,
    text: (option) => texts(option).at(-1) ?? null,
    texts,
    has: (option) => texts(option).length > 0,
    optionWords: wordsOf(given, options),
  };
}

function isGiven(value: unknown, isNegated: boolean): boolean {
  return isNegated ? value === false : value === true;
}

/** "--aircraft --json" forgot the file: without this "--json" would be taken as its name. */
function refuseSwallowedOptions(
  given: ReadonlyMap<string, readonly string[]>,
  options: readonly OptionDefinition[],
): void {
  const names = options.map(({ flags }) => longName(flags));
  for (const [option, texts] of given) {
    const swallowed = texts.find((text) => names.includes(text));
    if (swallowed !== undefined) throw usageFailure(usageSentences.valueMissing(`--${option}`, swallowed));
  }
}

function wordsOf(
  given: ReadonlyMap<string, readonly string[]>,
  options: readonly OptionDefinition[],
): readonly string[] {
  return options.flatMap(({ flags }) => {
    const long = longName(flags);
    const texts = given.get(long.slice(2)) ?? given.get(long.replace(/^--no-/, "")) ?? [];
    if (!flags.includes(" ")) return texts.length > 0 ? [long] : [];
    if (flags.includes(" [")) return texts.map((text) => (text === "" ? long : `${long}=${text}`));
    return texts.flatMap((text) => [long, text]);
  });
}

function usageOf(error: CommanderError, name: string, options: readonly OptionDefinition[]): Failure {
  const quoted = /'([^']*)'/.exec(error.message)?.[1] ?? "";
  const help = `tallywatt ${name} --help`;
  if (error.code === "commander.unknownOption") {
    return unknownOption(quoted, ["--help", ...options.map(({ flags }) => longName(flags))], name);
  }
  if (error.code === "commander.optionMissingArgument")
    return usageFailure(usageSentences.valueMissing(longName(quoted), null));
  if (error.code === "commander.missingArgument")
    return usageFailure(usageSentences.operandMissing(quoted, help));
  return usageFailure(usageSentences.other(error.message.replace(/^error: /, ""), help));
}

function unknownOption(word: string, known: readonly string[], name: string | null): Failure {
  const bare = word.split("=")[0] ?? word;
  const help = name === null ? "tallywatt --help" : `tallywatt ${name} --help`;
  return usageFailure(usageSentences.unknownOption(bare, nearestWord(bare, known), help));
}
