import { describe, expect, it } from "vitest";
import { LONGEST_LINE, MOST_BYTES, MOST_COLUMNS, MOST_ROWS } from "../../src/log/reading/limits.ts";
import { readSums } from "./readSums.ts";

function codesOf(bytes: Uint8Array | string): readonly string[] {
  const { outcome } = readSums(typeof bytes === "string" ? new TextEncoder().encode(bytes) : bytes);
  return outcome.state === "read" ? ["read"] : outcome.notices.map((notice) => notice.code);
}

/** A log of 30 rows; `pad` stands in a cell of the first. */
function wideLog(columns: number, pad = ""): string {
  const more = Array.from({ length: columns - 4 }, (_, at) => `,x${at}`).join("");
  const cells = ",1".repeat(columns - 4);
  const rows = Array.from(
    { length: 30 },
    (_, row) => `${row},30.${row % 7},2,${row === 0 ? pad : ""}${cells}\n`,
  );
  return `t_s,pack_v,amps,note${more}\n${rows.join("")}`;
}

/** `rows` equal rows under a header of `columns` columns. */
function longLog(rows: number, columns: number): Uint8Array {
  const header = new TextEncoder().encode(
    `${Array.from({ length: columns }, (_, at) => `x${at}`).join(",")}\n`,
  );
  const row = new TextEncoder().encode(`${Array.from({ length: columns }, () => "1").join(",")}\n`);
  const bytes = new Uint8Array(header.length + rows * row.length);
  bytes.set(header);
  // Doubling copies: a loop over millions of rows would be what takes the time.
  bytes.set(row, header.length);
  for (let filled = row.length; header.length + filled < bytes.length; filled *= 2) {
    bytes.copyWithin(
      header.length + filled,
      header.length,
      header.length + Math.min(filled, bytes.length - header.length - filled),
    );
  }
  return bytes;
}

describe("past a stated limit a log is refused, at it it is not", () => {
  it("bytes", () => {
    // Never written to, so never more than an address.
    expect(codesOf(new Uint8Array(MOST_BYTES + 1))).toEqual(["too-many-bytes"]);
  });

  it("columns", () => {
    expect(codesOf(wideLog(MOST_COLUMNS))).toEqual(["read"]);
    expect(codesOf(wideLog(MOST_COLUMNS + 1))).toEqual(["too-many-columns"]);
  });

  it("characters of a line", () => {
    const other = "0,30.0,2,".length;
    expect(codesOf(wideLog(4, "x".repeat(LONGEST_LINE - other)))).toEqual(["read"]);
    expect(codesOf(wideLog(4, "x".repeat(LONGEST_LINE - other + 1)))).toEqual(["line-too-long"]);
  });

  it("rows", () => expect(codesOf(longLog(MOST_ROWS + 1, 2))).toEqual(["too-many-rows"]));
});
