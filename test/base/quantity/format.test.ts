import { describe, expect, test } from "vitest";
import {
  atLeast,
  atMost,
  between,
  decimalPlace,
  known,
  minutesAndSeconds,
  plainNumber,
  quantityText,
  toPlace,
  unknown,
} from "../../../src/base/quantity/index.ts";

describe("a number without interval", () => {
  test.each([
    [0, "0"],
    [-0, "0"],
    [7, "7"],
    [4312.7, "4313"],
    [99.97, "100.0"],
    [12.34, "12.3"],
    [3.456, "3.46"],
    [-3.456, "-3.46"],
    [0.9996, "1.00"],
    [0.02134, "0.0213"],
    [0.000012349, "0.0000123"],
    [0.0000005, "0.000000500"],
    [-2.344e-9, "-0.00000000234"],
    [1e-30, "0.00000000000000000000"],
  ])("%s is written %s", (value, text) => {
    expect(plainNumber(value)).toBe(text);
  });
});

describe("a quantity in words", () => {
  test("shows two digits of its half-width and the value to the same place (GUM 7.2.6)", () => {
    expect(quantityText(known(4312.7, 93, "mAh", "measured"))).toBe("4313 ± 93 mAh");
    expect(quantityText(known(4312.7, 930, "mAh", "measured"))).toBe("4310 ± 930 mAh");
    expect(quantityText(known(3.4567, 0.0123, "V", "measured"))).toBe("3.457 ± 0.012 V");
    expect(quantityText(known(50, 0.996, "A", "measured"))).toBe("50.0 ± 1.0 A");
  });

  test("with unequal sides gives both ends, a bound its end, and null its reason", () => {
    expect(quantityText(between(312, 298, 330, "s", "estimated"))).toBe("312 s (298 to 330 s)");
    expect(quantityText(atLeast(3310, 3300, "mAh", "measured", "the log ends"))).toBe("at least 3300 mAh");
    expect(quantityText(atMost(0.31, 0.33, "V", "derived", "no rest after"))).toBe("at most 0.330 V");
    expect(quantityText(unknown("A", "no current channel in this log"))).toBe(
      "not known: no current channel in this log",
    );
  });

  test("that is not finite is unknown, never a number", () => {
    expect(known(Number.NaN, 1, "A", "measured").value).toBeNull();
    expect(known(1, Number.POSITIVE_INFINITY, "A", "measured").value).toBeNull();
    expect(atLeast(1, Number.NaN, "A", "measured", "why").value).toBeNull();
    expect(atMost(Number.NaN, 1, "A", "measured", "why").value).toBeNull();
  });
});

test("places and minutes", () => {
  expect([93, 930, 0.93, 99.6].map(decimalPlace)).toEqual([0, 1, -2, 1]);
  expect(toPlace(4312.7, 1)).toBe("4310");
  expect(toPlace(-0.001, -2)).toBe("0.00");
  expect([372, 59.6, 0, -61].map(minutesAndSeconds)).toEqual(["6:12", "1:00", "0:00", "-1:01"]);
});
