import type { Facts } from "../../aircraft/facts.ts";
import { planResult } from "../../flight/judgement/index.ts";
import { sizeText } from "../../flight/prediction/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { knownParts } from "./knownParts.ts";
import { BOOK_OPTION } from "./logbook/openBook.ts";
import { CONDITION_OPTIONS, conditionsOf } from "./planConditions.ts";
import { planSummary } from "./planSummary.ts";
import { READING_OPTIONS, readingOptions } from "./readingOptions.ts";
import { commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "the power budget that follows from what is fitted, each number with its interval",
  examples: [
    { line: "tallywatt plan --aircraft tern.json", about: "from the aircraft file and published ranges" },
    {
      line: "tallywatt plan --aircraft tern.json --log one.csv --log two.csv",
      about: "with the parts as these logs measured them",
    },
    {
      line: "tallywatt plan --aircraft tern.json --book season",
      about: "with the parts as the logbook's flights measured them",
    },
    {
      line: "tallywatt plan --aircraft tern.json --ambient 33 --elevation 900 --json",
      about: "for a hot, high field, as JSON",
    },
  ],
  options: [
    {
      flags: "--aircraft <A>",
      help: "an aircraft file, or a name in the logbook: what is fitted and was planned",
    },
    { flags: "--log <LOG>", help: "a log flown with this fitting; repeatable" },
    BOOK_OPTION,
    ...CONDITION_OPTIONS,
    { flags: "--json", help: "the result as JSON on standard output, nothing else" },
    ...READING_OPTIONS,
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const conditions = conditionsOf(call, 0);
  const found = await knownParts(call, io, talk, readingOptions(call));
  if (found.exit !== null) return found.exit;
  const { facts, budget, name } = found.aircraft;
  const result = planResult(facts, budget, found.known, { ...conditions, reservePct: budget.reservePct });
  if (call.has("json")) talk.data(JSON.stringify(result, null, 2));
  else tell(talk, planSummary(name ?? "", found, result, nextCommand(call, facts, found.flights)));
  return EXIT.done;
}

/** First a log, then the change that the trade tries first: an inch more diameter, an inch less pitch. */
function nextCommand(call: Call, { propeller }: Facts, flights: number): string {
  const aircraft = call.has("aircraft") ? ["--aircraft", call.text("aircraft") ?? ""] : [];
  if (flights === 0) return commandLine(["plan", ...aircraft, "--log", "flight.csv"]);
  const diameterIn = (propeller.diameterIn ?? 18) + 1;
  const pitchIn = Math.max(0.5, (propeller.pitchIn ?? 9) - 1);
  const size = sizeText({ diameterIn, pitchIn });
  return commandLine(["swap", ...aircraft, ...sourceWords(call), "--propeller", size]);
}

/** Where the call takes the parts from, to repeat in another. */
export function sourceWords(call: Call): readonly string[] {
  const book = call.text("book");
  return [...call.texts("log").flatMap((log) => ["--log", log]), ...(book === null ? [] : ["--book", book])];
}

/** The headline, second line, in bold. */
export function tell(talk: Talk, lines: readonly string[]): void {
  const [first = "", headline = "", ...rest] = lines;
  talk.data(first);
  talk.boldData(headline);
  if (rest.length > 0) talk.data(rest.join("\n"));
}
