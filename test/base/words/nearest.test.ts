import { describe, expect, it } from "vitest";
import { CHANNEL_NAMES } from "../../../src/base/channels/index.ts";
import { nearestWord } from "../../../src/base/words/index.ts";
import { rightShare } from "../../support/typos.ts";

describe("nearestWord", () => {
  it.each([
    ["chekc", ["check", "columns"], "check"],
    ["CHECK", ["check", "columns"], "check"],
    ["currrent", ["current", "airspeed"], "current"],
    ["nwe", ["new", "demo"], "new"],
    ["zzzzzz", ["check", "columns"], null],
    ["", ["check"], null],
    ["x", ["kv"], null],
  ])("finds for %s among %j: %s", (typed, known, expected) => {
    expect(nearestWord(typed, known)).toBe(expected);
  });

  it("gives the right channel first for at least 90 % of single slips", () => {
    const cellNumbers = (name: string): boolean => /^cellVoltage/.test(name) && name !== "cellVoltage1";
    const names = CHANNEL_NAMES.filter((name) => !cellNumbers(name));
    const { share, count, wrong } = rightShare(names, (typo) => nearestWord(typo, names));
    expect(count).toBeGreaterThan(400);
    expect(share, wrong.join("; ")).toBeGreaterThanOrEqual(0.9);
  });
});
