/** Every sentence about an aircraft file that a user can meet. `place` is "tern.json line 6". */

export const aircraftSentences = {
  notJson: (place: string, problem: string): string =>
    `${place}: ${problem}. An aircraft file is JSON; // comments and trailing commas are fine.`,

  notObject: (file: string): string =>
    `${file}: an aircraft file is one { } with at least "name" and "pack": { "cells": 8 }. To start one: tallywatt new FILE.`,

  tooLarge: (file: string, limit: number): string =>
    `${file}: this is too large or too deeply nested for an aircraft file (limit ${limit} characters). Is it the right file?`,

  unknownKey: (place: string, path: string, help: string): string =>
    `${place}: ${path} is not a key of an aircraft file. ${help}`,

  didYouMean: (path: string): string => `Did you mean ${path}?`,

  keysAre: (keys: readonly string[]): string => `Keys allowed here: ${keys.join(", ")}.`,

  keyTwice: (place: string, path: string, firstLine: number): string =>
    `${place}: ${path} is given twice, first in line ${firstLine}. Keep one.`,

  missing: (place: string, path: string, example: string): string =>
    `${place}: ${path} is missing. It is required; for example ${example}.`,

  wrongValue: (place: string, path: string, value: string, allowed: string, example: string): string =>
    `${place}: ${path} is ${value}. It must be ${allowed}; for example ${example}.`,

  numberInQuotes: (place: string, path: string, value: string, bare: string): string =>
    `${place}: ${path} is ${value}, which is text. Write the number without quotes: ${bare}.`,

  nullValue: (place: string, path: string): string =>
    `${place}: ${path} is null. Leave the key out when its value is not known.`,

  burstBelowContinuous: (place: string, burstA: number, continuousA: number): string =>
    `${place}: controller.burstA is ${burstA}, below controller.continuousA ${continuousA}. It must be at least that.`,

  loadedAboveFull: (place: string, minLoadedCellV: number, fullCellV: number): string =>
    `${place}: pack.minLoadedCellV is ${minLoadedCellV}. It must be below the full cell's ${fullCellV} V.`,
} as const;

/** What a JSON reader stumbled over, in plain words. */
export const JSON_PROBLEMS: Readonly<Record<string, string>> = {
  InvalidSymbol: "a word stands where a value must be; put text in double quotes",
  DecimalComma: "a number is written with a comma; write a point, as in 3.5",
  InvalidNumberFormat: "a number is not written as JSON wants it (a point as decimal mark, no unit)",
  PropertyNameExpected: "a key in double quotes is expected here",
  ValueExpected: "a value is missing here",
  ColonExpected: "a colon is missing after the key",
  CommaExpected: "a comma is missing before this",
  CloseBraceExpected: "a closing } is missing",
  CloseBracketExpected: "a closing ] is missing",
  EndOfFileExpected: "more text follows the closing }",
  InvalidCommentToken: "a comment is not written as // or /* */",
  UnexpectedEndOfComment: "a comment is not closed",
  UnexpectedEndOfString: "a closing quote is missing",
  UnexpectedEndOfNumber: "a number stops early",
  InvalidUnicode: "a \\u escape is not complete",
  InvalidEscapeCharacter:
    "a backslash is followed by a letter that JSON does not know; write \\\\ for a backslash",
  InvalidCharacter: "a control character stands inside the text",
};
