import type { Call, OptionDefinition } from "./commandDefinition.ts";
import { usageFailure } from "./failure.ts";
import { usageSentences } from "./sentences.ts";

/** Values given with each option by its name without dashes; [""] for an option without value. */
export type GivenOptions = ReadonlyMap<string, readonly string[]>;

/** What a command gets to see of its words. Throws a usage Failure when an option swallowed the next one. */
export function callFrom(
  name: string,
  operands: readonly string[],
  given: GivenOptions,
  options: readonly OptionDefinition[],
): Call {
  refuseSwallowedOptions(given, options);
  const texts = (option: string): readonly string[] => given.get(option) ?? [];
  return {
    name,
    operands,
    text: (option) => texts(option).at(-1) ?? null,
    texts,
    has: (option) => texts(option).length > 0,
    optionWords: wordsOf(given, options),
  };
}

/** "--ambient <C>" to "--ambient". */
export function longName(flags: string): string {
  return flags.split(" ")[0] ?? flags;
}

/** "--aircraft --json" forgot the file: without this "--json" would be taken as its name. */
function refuseSwallowedOptions(given: GivenOptions, options: readonly OptionDefinition[]): void {
  const names = options.map(({ flags }) => longName(flags));
  for (const [option, texts] of given) {
    const swallowed = texts.find((text) => names.includes(text));
    if (swallowed !== undefined) throw usageFailure(usageSentences.valueMissing(`--${option}`, swallowed));
  }
}

function wordsOf(given: GivenOptions, options: readonly OptionDefinition[]): readonly string[] {
  return options.flatMap(({ flags }) => {
    const long = longName(flags);
    const texts = given.get(long.slice(2)) ?? [];
    if (!flags.includes(" ")) return texts.length > 0 ? [long] : [];
    if (flags.includes(" [")) return texts.map((text) => (text === "" ? long : `${long}=${text}`));
    return texts.flatMap((text) => [long, text]);
  });
}
