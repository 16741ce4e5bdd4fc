import { NUMBER_KEYS, type NumberKeyPath } from "../../aircraft/index.ts";
import { swapResult } from "../../flight/judgement/index.ts";
import type { Change } from "../../flight/prediction/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import { EXIT, type ExitCode } from "./exitCodes.ts";
import { usageFailure } from "./failure.ts";
import type { Io } from "./io.ts";
import { keyNumber } from "./knownNumbers.ts";
import { knownParts } from "./knownParts.ts";
import { BOOK_OPTION } from "./logbook/openBook.ts";
import { sourceWords, tell } from "./plan.ts";
import { CONDITION_OPTIONS, conditionsOf } from "./planConditions.ts";
import { planSentences } from "./planSentences.ts";
import { READING_OPTIONS, readingOptions } from "./readingOptions.ts";
import { commandLine } from "./shellWord.ts";
import { swapSummary } from "./swapSummary.ts";
import type { Talk } from "./talk.ts";

export const command: CommandDefinition = {
  operands: "",
  about: "another propeller, cell count, capacity or day: before and after, side by side",
  examples: [
    {
      line: "tallywatt swap --aircraft tern.json --log one.csv --propeller 19x8",
      about: "another propeller, from what the log measured",
    },
    {
      line: "tallywatt swap --aircraft tern.json --book season --propeller 19x8",
      about: "the same from the logbook's flights",
    },
    {
      line: "tallywatt swap --aircraft tern.json --cells 7 --capacity 6000 --json",
      about: "another pack, from published ranges, as JSON",
    },
  ],
  options: [
    { flags: "--aircraft <A>", help: "an aircraft file, or a name in the logbook: what is fitted now" },
    { flags: "--log <LOG>", help: "a log flown with this fitting; repeatable" },
    BOOK_OPTION,
    { flags: "--propeller <DxP>", help: "diameter x pitch in inches, e.g. 19x8" },
    { flags: "--blades <N>", help: "blades of the propeller" },
    { flags: "--cells <N>", help: "cells in series after the change" },
    { flags: "--capacity <MAH>", help: "capacity after the change" },
    ...CONDITION_OPTIONS,
    { flags: "--json", help: "the result as JSON on standard output, nothing else" },
    ...READING_OPTIONS.filter(({ flags }) => !flags.startsWith("--cells")),
  ],
  run,
};

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const change = changeOf(call);
  const given = conditionsOf(call, 0);
  const isChanged = [...Object.values(change), given.ambientC, given.elevationM].some((one) => one !== null);
  if (!isChanged) throw usageFailure(planSentences.nothingChanges());
  const found = await knownParts(call, io, talk, { ...readingOptions(call), cells: null });
  if (found.exit !== null) return found.exit;
  const { facts, budget, name } = found.aircraft;
  const { reservePct } = budget;
  const before = { ambientC: null, elevationM: null, reservePct };
  const result = swapResult(facts, budget, found.known, { before, after: { ...given, reservePct } }, change);
  if (call.has("json")) talk.data(JSON.stringify(result, null, 2));
  else tell(talk, swapSummary(name ?? "", found, result, nextCommand(call)));
  return EXIT.done;
}

function nextCommand(call: Call): string {
  const aircraft = call.has("aircraft") ? ["--aircraft", call.text("aircraft") ?? ""] : [];
  return commandLine(["plan", ...aircraft, ...sourceWords(call)]);
}

function changeOf(call: Call): Change {
  return {
    ...propellerOf(call),
    blades: keyNumber(call, "blades", "propeller.blades", "3"),
    cells: keyNumber(call, "cells", "pack.cells", "7"),
    capacityMah: keyNumber(call, "capacity", "pack.capacityMah", "6000"),
  };
}

const SIZE = /^\s*(\d+(?:\.\d+)?)\s*["”]?\s*[x×*]\s*(\d+(?:\.\d+)?)\s*["”]?\s*$/i;

function propellerOf(call: Call): Pick<Change, "diameterIn" | "pitchIn"> {
  const text = call.text("propeller");
  if (text === null) return { diameterIn: null, pitchIn: null };
  const [, diameter, pitch] = SIZE.exec(text) ?? [];
  const diameterIn = Number(diameter);
  const pitchIn = Number(pitch);
  const isRight = isInRange(diameterIn, "propeller.diameterIn") && isInRange(pitchIn, "propeller.pitchIn");
  if (!isRight) throw usageFailure(planSentences.propellerWrong(text));
  return { diameterIn, pitchIn };
}

function isInRange(value: number, path: NumberKeyPath): boolean {
  const { low, high } = NUMBER_KEYS[path];
  return value >= low && value <= high;
}
