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
  });
});
