import { describe, expect, it } from "vitest";
import { strictNumber } from "../../../src/log/reading/strictNumber.ts";

const POINT: readonly (readonly [string, number])[] = [
  ["0", 0],
  ["7", 7],
  ["12.5", 12.5],
  ["-12.5", -12.5],
  ["\u221212.5", -12.5],
  ["+5", 5],
  ["+35.0", 35],
  ["035.0", 35],
  [".5", 0.5],
  ["35.", 35],
  ["-.5", -0.5],
  ["-0.0", -0],
  ["1e3", 1000],
  ["2.8500e+2", 285],
  ["6.0E-1", 0.6],
  ["1,234.5", 1234.5],
  ["1,234,567", 1_234_567],
  ["1 234.5", 1234.5],
  ["1'234.5", 1234.5],
  ["1\u00a0234", 1234],
  ["1777600000000200", 1_777_600_000_000_200],
  ["0.1", 0.1],
  ["123456.789012", 123456.789012],
];
const COMMA: readonly (readonly [string, number])[] = [
  ["12,5", 12.5],
  ["\u22125,0", -5],
  ["1.234,5", 1234.5],
  ["6.943", 6943],
  ["1.234.567", 1_234_567],
  ["6943", 6943],
  [",5", 0.5],
  ["1,5e2", 150],
];
const NEVER = [
  "",
  " ",
  "0x1b1f",
  "0x10",
  "1O.5",
  "1o5",
  "abc",
  "NaN",
  "nan",
  "Infinity",
  "-Infinity",
  "inf",
  "1e999",
  "-1e999",
  "1e",
  "e5",
  ".",
  "-",
  "+",
  "--5",
  "5-",
  "1.2.3",
  "1,2,3",
  "12.5V",
  "50 %",
  "1_000",
  "0b1",
  "0o7",
  "true",
  "null",
  "٣",
  "１２",
  "1 23",
  "12 34.5",
  "1,23,456",
  "$5",
  "(5)",
  "5\u0000",
  "10:00",
  "2026-05-01",
];

describe("the one function that makes text a number", () => {
  it.each(POINT)("reads %j with a decimal point", (text, value) =>
    expect(strictNumber(text, ".")).toBe(value),
  );
  it.each(COMMA)("reads %j with a decimal comma", (text, value) =>
    expect(strictNumber(text, ",")).toBe(value),
  );
  it.each(NEVER)("takes %j for no number", (text) => {
    expect(strictNumber(text, ".")).toBeNaN();
    expect(strictNumber(text, ",")).toBeNaN();
  });
  it("does not read the other decimal mark", () => {
    expect(strictNumber("12,5", ".")).toBeNaN();
    expect(strictNumber("12.5", ",")).toBeNaN();
    expect(strictNumber("24.0", ",")).toBeNaN();
  });
  it("agrees with the language's own conversion, digit for digit", () => {
    for (let whole = 0; whole < 2000; whole++) {
      const text = `${whole * 37}.${String((whole * 7919) % 1000).padStart(3, "0")}`;
      expect(strictNumber(text, ".")).toBe(Number(text));
    }
  });
  it("is linear in hostile text", () => {
    for (const text of [
      "1".repeat(100_000),
      "1,".repeat(50_000),
      `${"1".repeat(100_000)}x`,
      " ".repeat(100_000),
    ]) {
      expect(strictNumber(text, ".")).toBeNaN();
    }
  });
});
