import { describe, expect, it } from "vitest";
import { MEASURE_NAMES } from "../../../src/flight/analysis/index.ts";
import { MEASURE_METHODS } from "../../../src/show/report/measureMethods.ts";
import * as partWords from "../../../src/show/report/parts/partWords.ts";
import * as sentences from "../../../src/show/report/sentences.ts";

import { sampleInput } from "../../support/sampleCheck.ts";

const MOST_WORDS = 25;

function texts(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(texts);
}

function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.!?:;])\s+/).filter((part) => part !== "");
}

describe("the report's sentences", () => {
  const meanings = sampleInput().checked.meanings[0]!;
  const said = [
    partWords.packLowest(2.6, 54.1, 20),
    partWords.PACK.notFound("the load hardly changed, so volts and charge cannot be told apart"),
    partWords.HEAT.fittedAir("21.6"),
    partWords.LOAD.disc(true),
    sentences.limitsPassedSentence(2, 1, 0),
    sentences.limitsPassedSentence(0, 2, 1),
    sentences.limitsPassedSentence(0, 0, 3),
    sentences.limitsPassedSentence(0, 0, 0),
    sentences.gapsSentence(2, 31.4),
    sentences.extremeSentence("Peak power", "2080 ± 52 W", { atS: 72, line: 721 }),
    sentences.cursorRowsWords(4000, 500_000),
  ];
  const all = [
    ...Object.values(sentences).flatMap(texts),
    ...Object.values(partWords).flatMap(texts),
    ...[...meanings.pack, ...meanings.heat, ...meanings.load],
    ...MEASURE_NAMES.flatMap((name) => texts(MEASURE_METHODS[name])),
    ...said,
  ];

  it("have at most 25 words each", () => {
    const long = all.flatMap(sentencesOf).filter((text) => text.split(/\s+/).length > MOST_WORDS);
    expect(long).toEqual([]);
  });

  it("never promise", () => {
    expect(all.filter((text) => /guaranteed|OK to fly|\bsafe\b/i.test(text))).toEqual([]);
  });

  it("speak of minutes, seconds and lengths as a person does", () => {
    expect(sentences.durationWords(278)).toBe("4 min 38 s");
    expect(sentences.seconds(14.2)).toBe("14.2 s");
    expect(sentences.seconds(10)).toBe("10 s");
    expect(sentences.noDataWords(6.1, true)).toBe("clock jumped");
  });
});
