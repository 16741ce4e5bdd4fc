import { describe, expect, it } from "vitest";
import { atLeast, atMost, known, type Quantity, unknown } from "../../../src/base/quantity/index.ts";
import { verdictOf } from "../../../src/flight/judgement/index.ts";

const amps = (value: number, halfWidth: number): Quantity => known(value, halfWidth, "A", "measured");

describe("verdict of a measure against a limit of 100 A, close within 10 A", () => {
  it.each([
    [amps(80, 5), "within"],
    [amps(89.9, 0.05), "within"],
    [amps(90.1, 0.05), "close"],
    [amps(80, 25), "close"],
    [amps(101, 2), "close"],
    [amps(100, 0), "close"],
    [amps(103, 2), "outside"],
    [unknown("A", "no current channel"), "not judged"],
    [atLeast(60, 58, "A", "measured", "the log ends under power"), "not judged"],
    [atLeast(140, 130, "A", "measured", "the log ends under power"), "outside"],
    [atMost(60, 70, "A", "measured", "no rest after"), "within"],
  ] as const)("%o is %s", (measured, verdict) => {
    expect(verdictOf(measured, "atMost", 100, 10)).toBe(verdict);
  });

  it("never judges a number in doubt", () => {
    for (const size of [80, 140]) {
      const doubted = { ...amps(size, 1), doubt: "the logged current may be twice too high" } as Quantity;
      expect(verdictOf(doubted, "atMost", 100, 10)).toBe("not judged");
    }
  });

  it("never passes a number that is not finite", () => {
    const broken = { ...amps(80, 1), value: Number.NaN } as Quantity;
    expect(verdictOf(broken, "atMost", 100, 10)).toBe("not judged");
    expect(verdictOf(amps(80, 1), "atMost", Number.NaN, 10)).toBe("not judged");
    const brokenEnd = { ...amps(80, 1), high: Number.NaN } as Quantity;
    expect(verdictOf(brokenEnd, "atMost", 100, 10)).toBe("not judged");
  });
});

describe("verdict against a lowest cell voltage of 3.3 V, close within 0.05 V", () => {
  const volts = (value: number, halfWidth: number): Quantity => known(value, halfWidth, "V", "measured");
  it.each([
    [volts(3.5, 0.02), "within"],
    [volts(3.34, 0.01), "close"],
    [volts(3.31, 0.02), "close"],
    [volts(3.2, 0.02), "outside"],
  ] as const)("%o is %s", (measured, verdict) => {
    expect(verdictOf(measured, "atLeast", 3.3, 0.05)).toBe(verdict);
  });
});

describe("verdict against a plan of 55 A within 10 % either way", () => {
  it.each([
    [amps(55, 2), "within"],
    [amps(60, 0.4), "within"],
    [amps(60, 1), "close"],
    [amps(62, 1), "outside"],
    [amps(48, 1), "outside"],
  ] as const)("%o is %s", (measured, verdict) => {
    expect(verdictOf(measured, "around", 55, 0)).toBe(verdict);
  });
});
