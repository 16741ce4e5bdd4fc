import { describe, expect, test } from "vitest";
import * as say from "../../../src/log/recording/sentences.ts";

const lines = [2, 3, 4, 5, 6];
const cells = lines.map((line) => ({ value: 6553.5, line }));
const stretches = lines.map((line) => ({ seconds: 130.2, firstLine: line, lastLine: line + 1000 }));

const EVERY_SENTENCE: readonly string[] = [
  say.timeMissing(5, lines),
  say.clockWrapped("timeOfDay", [302]),
  say.clockWrapped("elapsed", [302]),
  say.timeWentBack([30, 30, 30, 30, 30], lines),
  say.timeJumped([302]),
  say.rowsOutOfOrder(5, lines),
  say.timeDamaged(5, lines),
  say.duplicateRows(600, lines),
  say.clockStoodStill([10], [51]),
  say.severalRowsPerStamp(400, 3),
  say.sameStamps(1, 3),
  say.gap([{ seconds: 20.2, lineBefore: 201, lineAfter: 202 }]),
  say.gap(lines.map((line) => ({ seconds: 125, lineBefore: line, lineAfter: line + 1 }))),
  say.gapOfUnknownLength(201, 202),
  say.masked("impossible", "controllerTemperature", cells),
  say.masked("spike", "cellVoltage3", cells),
  say.masked("jump", "controllerTemperature", cells),
  say.probeJumped("packTemperature", {
    beforeC: 62.1,
    afterC: 0,
    jumpLine: 812,
    firstLine: 812,
    lastLine: 3001,
  }),
  say.probeStuck("motorTemperature", { valueC: 61.5, seconds: 125, firstLine: 812, lastLine: 1437 }),
  say.deadSensor(say.deadWhile("current", 0, "the shaft turns")),
  say.deadSensor(say.silent("controllerTemperature", -127)),
  say.deadSensor(say.REVERSED_CURRENT),
  say.reversedCurrent("packVoltage"),
  say.reversedCurrent("shaftSpeed"),
  say.stuck("packVoltage", "current", { value: 25.1, seconds: 12, firstLine: 100, lastLine: 160 }),
  say.currentFailed({ low: 0, high: 0.2, seconds: 235, firstLine: 752, lastLine: 1926 }),
  say.currentCeiling(40, lines, "shaftSpeed"),
  say.missing(["current"], stretches),
  say.missing(["packVoltage", "current", "shaftSpeed"], stretches),
  say.coarseResolution("current", 5),
  say.negativeRestCurrent(-0.2),
];

describe("sentences of the recording", () => {
  test("every function of the catalogue is looked at here", () => {
    const used = new Set(Object.keys(say));
    expect(used.size).toBe(26);
  });

  test.each(EVERY_SENTENCE.map((text) => [text]))("%s", (text) => {
    expect(text).not.toMatch(/undefined|NaN|Infinity/);
    for (const sentence of text.split(/(?<=[.:]) (?=[A-Z])/)) {
      expect(sentence.split(" ").length).toBeLessThanOrEqual(25);
    }
    expect(text.charAt(0)).toBe(text.charAt(0).toUpperCase());
    expect(text.endsWith(".")).toBe(true);
  });
});
