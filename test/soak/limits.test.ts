import { describe, expect, it, vi } from "vitest";
import { decimalText } from "./logText.ts";
import { readSums } from "./readSums.ts";

/** The stated limits, made small: what counts is what happens at them and one past them. */
vi.mock("../../src/log/reading/limits.ts", async (original) => ({
  ...(await original<typeof import("../../src/log/reading/limits.ts")>()),
  MOST_BYTES: 8000,
  LONGEST_LINE: 400,
  MOST_COLUMNS: 40,
  MOST_ROWS: 300,
  MOST_TABLE_CELLS: 3000,
}));

function codesOf(rows: number, columns = 3, pad = ""): readonly string[] {
  const more = Array.from({ length: columns - 3 }, (_, at) => `,x${at}`).join("");
  const cells = ",1".repeat(columns - 3);
  const lines = Array.from({ length: rows }, (_, row) => `${decimalText(row, 1)},30.${row % 10},2${cells}`);
  const text = `t_s,pack_v,amps${more}\n${lines.join("\n")}${pad}\n`;
  const { outcome } = readSums(new TextEncoder().encode(text));
  return outcome.state === "read" ? ["read"] : outcome.notices.map((notice) => notice.code);
}

describe("at a stated limit a log is read, one past it it is refused", () => {
  it.each([
    ["rows", 300, 3, "", "read"],
    ["a row more", 301, 3, "", "too-many-rows"],
    ["rows times columns", 75, 40, "", "read"],
    ["a cell more than rows times columns", 76, 40, "", "too-many-rows"],
    ["columns", 20, 40, "", "read"],
    ["a column more", 20, 41, "", "too-many-columns"],
    ["a long line", 60, 3, " ".repeat(388), "read"],
    ["a character more in the line", 60, 3, " ".repeat(500), "line-too-long"],
    ["bytes", 60, 3, "\n".repeat(8000), "too-many-bytes"],
  ])("%s", (_what, rows, columns, pad, expected) => {
    expect(codesOf(rows, columns, pad)).toContain(expected);
  });
});
