import { describe, expect, it } from "vitest";
import { numbersOf, numbersText } from "../../../src/flight/analysis/index.ts";

describe("a row of numbers as text", () => {
  it("keeps tenths and holes", () => {
    expect(numbersText([25, 25.04, Number.NaN, -3.26])).toBe("25 25 - -3.3");
    expect([...numbersOf("25 25.1 - -3.3")]).toEqual([25, 25.1, Number.NaN, -3.3]);
  });
  it("is empty when nothing is there, never a zero", () => {
    expect(numbersText([])).toBe("");
    expect(numbersOf("")).toHaveLength(0);
    const written = "0 -0 0.1 -12.7 99999.9 123456789012.3 9007199254740993 1e3 1.25 .5 5. -.5 - -- x 1.2.3";
    const plain = written.split(" ").map((part) => (part === "-" ? Number.NaN : Number(part)));
    expect([...numbersOf(written)]).toEqual(plain);
    const tenths = Array.from({ length: 20_001 }, (_, at) => (at - 10_000) / 10);
    expect([...numbersOf(tenths.join(" "))]).toEqual(tenths.map((one) => one + 0));
  });
});
