import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Io } from "../../src/apps/commands/io.ts";
import { oneLine, printable } from "../../src/apps/commands/printable.ts";
import { commandLine, shellWord } from "../../src/apps/commands/shellWord.ts";
import { talkThrough } from "../../src/apps/commands/talk.ts";

/** Control characters except newline and tab, direction marks, invisible separators, half pairs. */
const FORBIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not pass
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]|\p{Cs}/u;

describe("printable", () => {
  it.each([
    ["plain °C Ω ± 12", "plain °C Ω ± 12"],
    ["\u001B[31mred", "\\u001b[31mred"],
    ["bell\u0007", "bell\\u0007"],
    ["\u009B2J", "\\u009b2J"],
    ["a\u202Eb", "a\\u202eb"],
    ["a\u2066b", "a\\u2066b"],
    ["a\rb", "a\\u000db"],
    ["half \uD83D", "half \\ud83d"],
    ["whole \u{1F6E9}", "whole \u{1F6E9}"],
    ["two\nlines\tand tab", "two\nlines\tand tab"],
  ])("%j becomes %j", (text, expected) => {
    expect(printable(text)).toBe(expected);
  });

  it("lets nothing forbidden through, whatever the text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 100 }), (text) => {
        expect(printable(text)).not.toMatch(FORBIDDEN);
        expect(oneLine(text)).not.toMatch(/[\n\t]/);
      }),
      { seed: 20260616, numRuns: 300 },
    );
  });

  it("leaves the meaning of JSON text unchanged", () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: "binary" }), (value) => {
        const text = JSON.stringify(value, null, 2);
        expect(JSON.parse(printable(text))).toEqual(JSON.parse(text));
      }),
      { seed: 20260617, numRuns: 300 },
    );
  });
});

describe("a suggested command line", () => {
  it.each([
    ["flight.csv", "flight.csv"],
    ["--column", "--column"],
    ["my flight.csv", "'my flight.csv'"],
    ["it's", "'it'\\''s'"],
    ["current=U [A]", "'current=U [A]'"],
    ["current=#3", "current=#3"],
    ["#3", "'#3'"],
    ["", "''"],
    ["$(x)", "'$(x)'"],
  ])("writes %j as %s", (word, expected) => {
    expect(shellWord(word)).toBe(expected);
  });

  it("starts with the command", () => {
    expect(commandLine(["check", "a b.csv", "--rate", "5"])).toBe("tallywatt check 'a b.csv' --rate 5");
  });
});

describe("bold letters", () => {
  const said = (env: Record<string, string>, outIsTerminal: boolean, isPlain: boolean): string => {
    const parts: string[] = [];
    const out = { write: (part: string) => void parts.push(part) };
    talkThrough({ out, err: out, env, outIsTerminal } as unknown as Io, isPlain).boldData("Peak 61 A");
    return parts.join("");
  };

  it.each([
    ["a terminal", {}, true, false, true],
    ["a pipe", {}, false, false, false],
    ["--no-color", {}, true, true, false],
    ["NO_COLOR", { NO_COLOR: "1" }, true, false, false],
    ["an empty NO_COLOR", { NO_COLOR: "" }, true, false, true],
    ["TERM=dumb", { TERM: "dumb" }, true, false, false],
  ])("on %s", (_where, env, isTerminal, isPlain, isBold) => {
    const text = said(env as Record<string, string>, isTerminal, isPlain);
    expect(text.includes("\u001B")).toBe(isBold);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: taking the bold marks off
    expect(text.replace(/\u001B\[\d+m/g, "")).toBe("Peak 61 A\n");
  });
});
