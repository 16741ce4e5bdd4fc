import { describe, expect, it } from "vitest";
import { cellsOfRecords } from "../../../src/log/reading/papaparse.ts";
import { codesOf, FLIGHT, logOf, noticesOf, outcomeOf, questionOf } from "./support.ts";

const DELIMITERS = [",", ";", "\t", "|", "   "] as const;
const MARKS = [".", ","] as const;
const NEWLINES = ["\n", "\r\n", "\r"] as const;
const ENCODINGS = ["utf-8", "utf-8-bom", "utf-16le", "utf-16be"] as const;

function encoded(text: string, encoding: (typeof ENCODINGS)[number]): Uint8Array {
  if (encoding === "utf-8") return new TextEncoder().encode(text);
  if (encoding === "utf-8-bom") return new TextEncoder().encode(`\ufeff${text}`);
  const wide = new Uint8Array(2 * text.length + 2);
  const view = new DataView(wide.buffer);
  [...`\ufeff${text}`].forEach((character, at) => {
    view.setUint16(2 * at, character.charCodeAt(0), encoding === "utf-16le");
  });
  return wide;
}

function smallLog(delimiter: string, mark: string, newline: string): string {
  const written = (value: number, places: number) => value.toFixed(places).replace(".", mark);
  const lines = FLIGHT.map(({ s, rpm, celsius, volts, amps }) =>
    [written(s, 1), rpm, written(celsius, 1), written(volts, 2), written(amps, 1)].join(delimiter),
  );
  return [["time_s", "rpm", "esc_temp_c", "pack_v", "current_a"].join(delimiter), ...lines, ""].join(newline);
}

const CROSS = DELIMITERS.flatMap((delimiter) =>
  MARKS.flatMap((mark) =>
    NEWLINES.flatMap((newline) => ENCODINGS.map((encoding) => ({ delimiter, mark, newline, encoding }))),
  ),
);

describe("dialects", () => {
  it.each(CROSS)(
    "delimiter $delimiter, mark $mark, newline $newline, $encoding",
    ({ delimiter, mark, newline, encoding }) => {
      const bytes = encoded(smallLog(delimiter, mark, newline), encoding);
      if (delimiter === "," && mark === ",") {
        expect(questionOf(bytes).options).toEqual(["--decimal comma --delimiter ,"]);
        return;
      }
      const log = logOf(bytes);
      expect(log.dialect).toEqual({
        encoding,
        delimiter: delimiter.trim() || delimiter[0],
        decimalMark: mark,
        headerLine: 1,
      });
      expect([...log.timeS]).toEqual(FLIGHT.map(({ s }) => s));
      expect([...log.channels.get("packVoltage")!]).toEqual(FLIGHT.map(({ volts }) => volts));
      expect([...log.channels.get("current")!]).toEqual(FLIGHT.map(({ amps }) => amps));
      expect(noticesOf(outcomeOf(bytes))).toEqual([]);
    },
  );

  it("joins the cells that an unquoted decimal comma cut, when both options say so", () => {
    const log = logOf(smallLog(",", ",", "\n"), { decimalMark: "comma", delimiter: "," });
    expect([...log.channels.get("packVoltage")!]).toEqual(FLIGHT.map(({ volts }) => volts));
    expect([...log.channels.get("shaftSpeed")!]).toEqual(FLIGHT.map(({ rpm }) => rpm));
  });

  it("reads Windows-1252 where only words have bytes beyond ASCII, and says so", () => {
    const text = smallLog(";", ",", "\n").replace("esc_temp_c", "Regler \u00b0C");
    const log = logOf(Uint8Array.from(text, (character) => character.charCodeAt(0)));
    expect(log.dialect.encoding).toBe("windows-1252");
    expect(log.columns[2]).toMatchObject({ channel: "controllerTemperature", header: "Regler \u00b0C" });
    expect(log.notices.map((notice) => notice.code)).toEqual(["encoding-guessed"]);
  });

  it("reads a log whose decimal mark shows only after a thousand rows", () => {
    const rows = Array.from({ length: 1500 }, (_, row) => `${row};1.500;${row < 1400 ? "30" : "30,5"};10`);
    const log = logOf(`time_s;rpm;pack_v;current_a\n${rows.join("\n")}\n`);
    expect(log.dialect.decimalMark).toBe(",");
    expect(log.channels.get("shaftSpeed")![0]).toBe(1500);
  });

  // RFC 4180 (Shafranovich, 2005) section 2, rules 5 to 7: quoted fields, line breaks inside, doubled quotes.
  it("RFC 4180 examples", () => {
    expect(cellsOfRecords(["aaa,bbb,ccc", '"aaa","bbb","ccc"', '"aaa","b""bb","ccc"'], ",")).toEqual([
      ["aaa", "bbb", "ccc"],
      ["aaa", "bbb", "ccc"],
      ["aaa", 'b"bb', "ccc"],
    ]);
    const log = logOf(
      'time_s,note,pack_v,current_a\r\n0,"a, b",30,1\r\n1,"b\r\nbb",31,2\r\n2,"c""c",32,3\r\n',
    );
    expect([...log.channels.get("packVoltage")!]).toEqual([30, 31, 32]);
    expect([0, 1, 2].map((row) => log.lineOfRow(row))).toEqual([2, 3, 5]);
  });

  it("a quote that never closes costs its own cell, or its line where the cells do not add up", () => {
    const lines = smallLog(",", ".", "\n").split("\n");
    lines[9] = `"${lines[9]}`;
    lines[14] = lines[14]!.replace(/,/, ',"');
    const log = logOf(lines.join("\n"));
    expect(log.rows).toBe(FLIGHT.length);
    expect([log.timeS[8], log.channels.get("shaftSpeed")![13]]).toEqual([Number.NaN, Number.NaN]);
    expect(log.channels.get("packVoltage")![8]).toBe(FLIGHT[8]!.volts);
    expect(log.dataLines).toBe(FLIGHT.length);
    expect(log.notices).toMatchObject([
      { code: "quote-unterminated", lines: [10, 15] },
      { code: "cells-unreadable", lines: [10] },
      { code: "cells-unreadable", lines: [15] },
    ]);
  });

  it("a log without header asks, and is read by column numbers", () => {
    const text = smallLog(",", ".", "\n").split("\n").slice(1).join("\n");
    expect(questionOf(text).options![0]).toContain("--column time=#1");
    const log = logOf(text, {
      columns: new Map([
        ["time", "#1"],
        ["packVoltage", "#4"],
        ["current", "#5"],
      ]),
    });
    expect(log.rows).toBe(FLIGHT.length);
  });

  it.each([
    ["", "empty"],
    ["\ufeff", "empty"],
    ["\n\n  \n", "empty"],
    ["time,volts\n", "no-data-rows"],
    ["some words\nand no numbers\n", "no-data-rows"],
    ["\u0001\u0002\u0003\u0004\u0005", "not-text"],
  ])("refuses %j", (text, code) => {
    const outcome = outcomeOf(text);
    expect(outcome.state).toBe("refusal");
    expect(codesOf(outcome)).toContain(code);
  });

  it("states its limits", () => {
    expect(codesOf(outcomeOf(`time_s,v,a\n0,30,1\n1,${"x".repeat(5_000_000)},1\n2,30,1\n`))).toEqual([
      "line-too-long",
    ]);
    const wide = Array.from({ length: 5001 }, (_, at) => `c${at}`).join(",");
    expect(codesOf(outcomeOf(`${wide}\n${"1,".repeat(5000)}1\n`))).toEqual(["too-many-columns"]);
  });
});
