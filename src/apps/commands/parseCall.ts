import { Command, CommanderError } from "commander";
import { nearestWord } from "../../base/words/index.ts";
import { callFrom, type GivenOptions, longName } from "./callFrom.ts";
import type { Call, CommandDefinition, OptionDefinition } from "./commandDefinition.ts";
import { type Failure, usageFailure } from "./failure.ts";
import { COMMON_OPTIONS } from "./help.ts";
import { usageSentences } from "./sentences.ts";

/** Reads the words of one command. Throws a usage Failure. */
export function parseCall(name: string, definition: CommandDefinition, words: readonly string[]): Call {
  const options = [...definition.options, ...COMMON_OPTIONS];
  const parser = parserOf(name, definition, options);
  try {
    parser.parse(withBareValues(words, options), { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError) throw usageOf(error, name, options);
    throw error;
  }
  return callFrom(name, parser.args, givenOptions(parser), options);
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

function givenOptions(parser: Command): GivenOptions {
  const values = parser.opts<Record<string, unknown>>();
  const given = new Map<string, readonly string[]>();
  for (const option of parser.options) {
    const value = values[option.attributeName()];
    const texts = Array.isArray(value) ? value.map(String) : value === !option.negate ? [""] : [];
    if (texts.length > 0) given.set(option.name(), texts);
  }
  return given;
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

export function unknownOption(word: string, known: readonly string[], name: string | null): Failure {
  const bare = word.split("=")[0] ?? word;
  const help = name === null ? "tallywatt --help" : `tallywatt ${name} --help`;
  return usageFailure(usageSentences.unknownOption(bare, nearestWord(bare, known), help));
}
