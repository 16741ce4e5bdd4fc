import { describe, expect, it } from "vitest";
import * as say from "../../../src/log/reading/sentences.ts";
import { LineCount } from "../../../src/log/reading/tableDefects.ts";

const MOST_WORDS = 25;
const count = new LineCount();
for (const line of [7, 9, 12, 14, 20]) count.add(line);
const NAME = say.columnName("Controller temperature of board", 3);

const SENTENCES: readonly string[] = [
  say.empty(),
  say.onlyErased(512),
  say.notText(),
  say.noLog("text without rows of numbers"),
  say.minutesOrHours(NAME, 11),
  say.minutesTaken(NAME, "--rate 0.0166667"),
  say.faintCurrent(NAME, "mA", "0.0469"),
  say.tooManyBytes(4e8),
  say.lineTooLong(3),
  say.tooManyColumns(6000),
  say.tooManyRows(),
  say.noDataRows("time,volts", 1),
  say.noDataRows("", 0),
  say.guessedEncoding("utf-16le"),
  say.tail(4096),
  say.preamble(5, "Logger,unit 7"),
  say.preamble(1, "x"),
  say.noHeader(1, "--column time=#1 --column packVoltage=#2 --column current=#3"),
  say.headerless(),
  say.packsInSeries(),
  say.currentDerived(NAME),
  say.repeatedHeader(count),
  say.changedColumns(count),
  say.wrongWidth(count, 5),
  say.damaged(count),
  say.brokenQuote(count),
  say.blankTails(count),
  say.cutLastLine(9),
  say.comments(count),
  say.footer(count),
  say.markChanges(count),
  say.longCell(3, 1_048_576, NAME),
  say.missingCells(30, NAME, ["NaN", "n/a", "--", "null", "inf"], [7, 9, 12]),
  say.missingCells(1, NAME, [], [7]),
  say.unreadableCells(12, NAME, "6\ufffd22", [7, 9, 12]),
  say.unreadableCells(1, NAME, "x", [7]),
  say.decimalCommaInCommaFile(5, 9),
  say.noJoinPattern(5, 9),
  say.badDelimiter(",,"),
  say.headerWidth(5, 6, 1),
  say.noTime(),
  say.constantTime(NAME, "12"),
  say.timeUnit(NAME, "s", 200, 119_800),
  say.clockWithoutSeconds(NAME, 3000),
  say.backwardTime(NAME, "385", "0"),
  say.timeUnitByCharge(NAME, 2, 93_200),
  say.unusableTime(NAME),
  say.ambiguousDate("03/04/2026"),
  say.rivals("controllerTemperature", [
    'column "temp 1" (#4)',
    'column "temp 2" (#5)',
    'column "temp 3" (#6)',
  ]),
  say.motorCurrent(NAME),
  say.channelUnit("packVoltage", NAME, "no unit in the header, and V does not fit 480 to 502"),
  say.cellCountUnclear(NAME, "23.2 V over 4 cells is 5.8 V a cell", 6),
  say.unitContradicted(NAME, "A", "mA", "55.3 A", "0.0553 A"),
  say.timeUnitContradicted(NAME, ["s", "ms"], ["512 s", "0.512 s"]),
  say.unitFromValues("packVoltage", NAME, "mV"),
  say.perCell(NAME),
  say.packFromCell(NAME),
  say.electricalSpeed(NAME),
  say.sharedCellSum(8),
  say.cellLost(4, 1200, 752, 0.998),
  say.cellNeverShown(4),
  say.deadCells(5, 6, [4]),
  say.notFound("packVoltage", []),
  say.notFound("packVoltage", [NAME]),
  say.nothingUseful(["foo", "bar", "baz"]),
  say.unknownHeader("curent", "current", ["a", "b"]),
  say.unknownHeader("x", null, ["a", "b"]),
  say.headerTwice("Temp", [3, 4]),
  say.unknownChannel("curent", "current"),
  say.unknownChannel("x", null),
  say.unknownUnit("current", "mV", ["A", "mA", "cA", "dA"]),
  say.badRate(0),
];

describe("sentences of reading", () => {
  it("every sentence of the catalogue is here", () => {
    const helpers = ["quoted", "columnName"];
    const names = Object.keys(say).filter((name) => !helpers.includes(name));
    expect(SENTENCES.length).toBeGreaterThanOrEqual(names.length);
  });

  it.each(SENTENCES)("%s", (text) => {
    for (const sentence of text.split(/[.?] /))
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(MOST_WORDS);
    expect(text).toMatch(/[.?,]$/);
  });

  it("a quoted piece of a file is short and holds no control characters", () => {
    expect(say.quoted(`a\u001b[31m\n\u202e${"x".repeat(100)}`)).toMatch(/^"[^\p{C}]{40}…"$/u);
  });
});
