import { describe, expect, it } from "vitest";
import { readClock } from "../../../src/log/reading/clockText.ts";
import { findDecimalMark, markEvidence } from "../../../src/log/reading/decimalMark.ts";
import { cellsOfRecords } from "../../../src/log/reading/papaparse.ts";
import { quoteState } from "../../../src/log/reading/quotes.ts";
import { strictNumber } from "../../../src/log/reading/strictNumber.ts";
import { codesOf, FLIGHT, type FlightRow, logOf, logText, noticesOf, outcomeOf, questionOf } from "./support.ts"; // biome-ignore format: one line

const HEADER = "time_s,pack_v,current_a";
const plain = (row: FlightRow) => [row.s, row.volts, row.amps];
const whole = logText(HEADER, plain);
/** The plain flight with one of its file lines (1-based) replaced. */
const withLine = (line: number, text: string) =>
  whole
    .split("\n")
    .map((each, at) => (at === line - 1 ? text : each))
    .join("\n");
const noticeOf = (text: string, code: string) =>
  noticesOf(outcomeOf(text)).find((notice) => notice.code === code);

describe("bytes", () => {
  const utf16 = (text: string, isBig: boolean) =>
    Uint8Array.from([...text].flatMap((one) => (isBig ? [0, one.charCodeAt(0)] : [one.charCodeAt(0), 0])));

  it.each([true, false])("UTF-16 without a mark is told by its zeros (big end first: %s)", (isBig) => {
    const log = logOf(utf16(whole, isBig));
    expect(log.dialect.encoding).toBe(isBig ? "utf-16be" : "utf-16le");
    expect(log.channels.get("packVoltage")?.[0]).toBe(33.2);
  });

  it("a mark of UTF-8 and nothing after it, or only erased bytes, is empty", () => {
    for (const tail of [[], [0, 0, 0, 0], [0xff, 0xff]]) {
      expect(codesOf(outcomeOf(Uint8Array.from([0xef, 0xbb, 0xbf, ...tail])))).toEqual(["empty"]);
    }
  });
});

describe("quotes", () => {
  // RFC 4180 (Shafranovich, 2005) section 2: 5 quotes only around a cell, 7 a doubled quote inside is a quote.
  it.each([
    ['"a",', "closed"],
    ['a,"b"', "closed"],
    ['a,"b""', "open"],
    ['a,"b"c', "broken"],
    ['a,"', "open"],
    ['a,""', "closed"],
  ] as const)("%s is %s", (line, state) => expect(quoteState(line, ",", false)).toBe(state));

  it("a line that goes on with a quoted cell closes it at the first lone quote", () => {
    expect(quoteState('b",c', ",", true)).toBe("closed");
    expect(quoteState("b,c", ",", true)).toBe("open");
    expect(quoteState('b""', ",", true)).toBe("open");
  });

  it("that do not close leave one list of cells a line", () => {
    expect(cellsOfRecords(["a,b", "c,d"], ",")).toEqual([
      ["a", "b"],
      ["c", "d"],
    ]);
    expect(cellsOfRecords(['"a,b', "c,d"], ",")).toHaveLength(2);
  });

  it("a cell over two lines at the end of a file is not lost without a word", () => {
    expect(noticeOf(`${whole}60,"33\n`, "rows-wrong-width")).toMatchObject({ lines: [302] });
  });
});

describe("numbers", () => {
  it.each([
    ["1.234,5", ","],
    ["1,234.5", "."],
    ["1.234", "ambiguous"],
    ["0.234", "."],
    [".", null],
    ["x", null],
  ] as const)("%s proves %s", (cell, mark) => expect(markEvidence(cell)).toBe(mark));

  it("three digits after each mark are decimals when every cell has them, groups when some have none", () => {
    expect(findDecimalMark([["1.234"], ["5.678"]])).toEqual({ mark: ".", isProven: false });
    expect(findDecimalMark([["1,234"], ["5,678"]])).toEqual({ mark: ",", isProven: false });
    expect(findDecimalMark([["1.234"], ["567"]])).toEqual({ mark: ",", isProven: false });
    expect(findDecimalMark([["1,234"], ["567"]])).toEqual({ mark: ".", isProven: false });
    expect(findDecimalMark([["12"], []])).toEqual({ mark: ".", isProven: false });
  });

  it.each([
    ["1.234,5", ",", 1234.5],
    ["1,234.5", ".", 1234.5],
    ["1 234,5", ",", 1234.5],
    ["1'234,5", ".", Number.NaN],
    ["12.5", ",", Number.NaN],
  ] as const)("%s with the mark %s", (text, mark, value) => expect(strictNumber(text, mark)).toBe(value));

  it("a quoted decimal comma in a comma file is read, and so are the plain rows after it", () => {
    const rows = Array.from({ length: 30 }, (_, row) => (row < 5 ? `${row},"30,5","2,5"` : `${row},31,3`));
    const log = logOf(`${HEADER}\n${rows.join("\n")}\n`);
    expect([...log.channels.get("packVoltage")!.slice(3, 7)]).toEqual([30.5, 30.5, 31, 31]);
    expect([...log.channels.get("current")!.slice(3, 7)]).toEqual([2.5, 2.5, 3, 3]);
  });

  it("a mark stated with --decimal is kept where a cell would prove the other", () => {
    const text = logText("time_s;pack_v;current_a", (row) => [row.s, row.volts, row.amps], ";");
    const stated = outcomeOf(text, { decimalMark: "comma" });
    expect(stated.state === "read" && stated.log.channels.get("packVoltage")?.[1] === 33.2).toBe(false);
    expect(logOf(text, { decimalMark: "point" }).channels.get("packVoltage")?.[0]).toBe(33.2);
  });
});

describe("clocks", () => {
  it.each([
    "1 Foo 2026",
    "31 Feb 2026",
    "10:75",
    "10:00:00+25:00",
    "10:00:00+02:75",
    "13:00:00 pm",
    "2026-02-30",
  ])(
    "%s is none", // biome-ignore format: a list of texts
    (text) => expect(readClock(text)).toBeNull(),
  );

  it.each([
    ["10:00:00+02", 36_000 - 7200],
    ["10:00:00-0130", 36_000 + 5400],
    ["10:05", 605],
  ])("%s", (text, seconds) => expect(readClock(text)?.secondsOfDay).toBe(seconds));

  it("days counted from 1970 keep their date where a stamp is missing", () => {
    const start = Date.UTC(2026, 5, 14, 10) / 1000;
    const log = logOf(
      logText("timestamp,pack_v,current_a", (row) => [row.s === 4 ? "" : start + row.s, row.volts, row.amps]),
    );
    expect(log.clock.kind).toBe("epoch");
    expect(log.clock.textOfRow(5)).toBe("2026-06-14T10:00:01.000Z");
    expect(log.clock.textOfRow(20)).toBeNull();
  });

  it("minutes that stand for seconds are offered as seconds", () => {
    const asked = questionOf(logText("time (min),pack_v,current_a", (row, ) => [5 * row.s, row.volts, row.amps])); // biome-ignore format: one case
    expect(asked.code).toBe("time-unit-unclear");
    expect(asked.options?.[0]).toBe("--unit time=s");
  });

  it("counts no unit explains ask for the rate", () => {
    const asked = questionOf(logText(HEADER, (row) => [4e15 * row.s, row.volts, row.amps]));
    expect(asked).toMatchObject({ code: "time-unit-unclear", options: ["--rate 1"] });
  });

  it("a column named as the clock that holds nothing is refused by name", () => {
    const text = logText("time_s,note,pack_v,current_a", (row) => [row.s, "", row.volts, row.amps]);
    const asked = questionOf(text, { columns: new Map([["time", "note"]]) });
    expect(asked).toMatchObject({ code: "time-unusable", text: expect.stringContaining("note") });
  });

  it("a count down asks for the rate that its steps show", () => {
    const down = (step: number) =>
      questionOf(logText(HEADER, (row) => [step * (300 - 5 * row.s), row.volts, row.amps]));
    expect(down(0.2)).toMatchObject({ code: "time-backward", options: ["--rate 5"] });
    expect(down(20)).toMatchObject({ code: "time-backward", options: ["--rate 1"] });
  });

  it("whole numbers without a unit are asked about by length or by charge", () => {
    const rows = (count: number, stepS: number, amps = 20) =>
      Array.from({ length: count }, (_, row) => `${stepS * row},30,${row % 50 === 0 ? "" : amps}`);
    const asked = (...lines: Parameters<typeof rows>) =>
      noticesOf(outcomeOf(`time,pack_v,current_a\n${rows(...lines).join("\n")}\n`)).find(
        ({ code }) => code === "time-unit-unclear",
      );
    expect(asked(1000, 1)).toBeUndefined();
    expect(asked(1300, 1)?.options).toEqual(["--unit time=0.1s", "--rate 4", "--unit time=s"]);
    expect(asked(400, 10)?.options).toEqual(["--unit time=0.1s", "--unit time=s"]);
    expect(asked(1500, 10)?.options).toEqual(["--unit time=ms", "--unit time=0.1s", "--unit time=s"]);
    // 350 A for 1000 s would be 97 Ah.
    expect(asked(1000, 1, 350)?.text).toContain("97.1 Ah");
  });

  it("a first column that only counts rows is no clock, one that rises otherwise is", () => {
    const first = (value: (row: number) => number) =>
      outcomeOf(logText("x,pack_v,current_a", (row) => [value(5 * row.s), row.volts, row.amps]));
    expect(codesOf(first((row) => Math.round(row)))).toContain("time-missing");
    const rising = first((row) => Number((row * 0.2).toFixed(1)));
    expect(rising.state).toBe("read");
  });

  it("of two clocks that both run, the one that moves in more rows counts, in either order", () => {
    for (const isFirst of [true, false]) {
      const text = logText(
        isFirst ? "time_s,elapsed_s,pack_v,current_a" : "elapsed_s,time_s,pack_v,current_a",
        (row) => {
          const [fine, coarse] = [row.s, Math.floor(row.s)];
          return [...(isFirst ? [fine, coarse] : [coarse, fine]), row.volts, row.amps];
        },
      );
      expect(logOf(text).columns.find(({ channel }) => channel === "time")?.header).toBe("time_s");
    }
  });
});

describe("lines that are no rows", () => {
  it("a row of which every cell is empty, a comment, a row behind a mark", () => {
    const empty = logOf(withLine(10, ",,"));
    expect([empty.rows, empty.channels.get("current")?.[8]]).toEqual([300, Number.NaN]);
    expect(noticeOf(withLine(10, "# landed"), "comment-lines")).toMatchObject({ count: 1, lines: [10] });
    expect(noticeOf(withLine(10, "# 1.6,33,2"), "rows-wrong-width")).toMatchObject({ lines: [10] });
    const one = noticeOf(`${whole}\nTotal charge used,9 mAh\n`, "footer");
    expect(one).toMatchObject({ count: 1, text: expect.stringContaining("1 line ") });
  });

  it("more than twenty of a kind are all counted, the first twenty listed", () => {
    const many = whole
      .split("\n")
      .map((line, at) => (at > 99 && at < 130 ? `${line},9` : line))
      .join("\n");
    const notice = noticeOf(many, "rows-wrong-width");
    expect(notice?.count).toBe(30);
    expect(notice?.lines).toHaveLength(20);
  });

  it("more than twenty long cells are each told by their line, up to twenty", () => {
    const text = logText(`${HEADER},remark`, (row) => [...plain(row), row.s < 6 ? "x".repeat(10_001) : ""]);
    const lines = noticesOf(outcomeOf(text)).filter(({ code }) => code === "long-comment");
    expect(lines.map(({ lines: [line] = [] }) => line)).toEqual(
      Array.from({ length: 20 }, (_, at) => at + 2),
    );
  });

  it("one column of a log of one column", () => {
    const one = logText("pack_v", (row) => [row.volts]);
    const outcome = outcomeOf(one.replace("\n33.2\n", "\n33.2,1\n"), { rateHz: 5 });
    expect(outcome.state).not.toBe("refused");
  });

  it("only header lines are a log without rows", () => {
    expect(codesOf(outcomeOf(`${HEADER}\n${HEADER}\n`))).toContain("no-data-rows");
    expect(codesOf(outcomeOf(`${HEADER}\n# 1\n`))).toContain("no-data-rows");
  });

  it("times among volts count as missing where most are volts, also beside blanks", () => {
    const text = logText(HEADER, (row) => {
      const at = Math.round(row.s * 5);
      return [row.s, at === 40 ? "" : at < 80 && at % 2 === 0 ? "24:08.8" : row.volts, row.amps];
    });
    const log = logOf(text);
    expect(log.channels.get("packVoltage")?.[0]).toBeNaN();
    expect(log.channels.get("packVoltage")?.[1]).toBe(FLIGHT[1]!.volts);
    expect(noticeOf(text, "cells-unreadable")).toMatchObject({ count: 39 });
  });
});

describe("names", () => {
  it("parted by wide gaps hold blanks in a log of blanks", () => {
    const rows = FLIGHT.map((row) => `${row.s} ${row.volts} ${row.amps}`).join("\n");
    const log = logOf(`time s   pack volts   main current A\n${rows}\n`);
    expect(log.columns.map(({ header }) => header)).toEqual(["time s", "pack volts", "main current A"]);
    const narrow = outcomeOf(`time s   pack volts current A\n${rows}\n`);
    expect(codesOf(narrow)).toContain("header-width");
  });

  it("in brackets are words where they are no unit", () => {
    const log = logOf(logText("time_s,voltage (pack),current (main) A", plain));
    expect(log.columns.map(({ channel }) => channel)).toEqual(["time", "packVoltage", "current"]);
  });

  it("that no column has list the columns there are, the first eight and how many more", () => {
    const eleven = Array.from({ length: 8 }, (_, at) => `zz${at}`);
    const text = logText(`${HEADER},${eleven.join(",")}`, (row) => [...plain(row), ...eleven.map(() => 1)]);
    const asked = questionOf(text, { columns: new Map([["current", "qqqqqqqqq"]]) });
    expect(asked.text).toContain(" and 3 more");
    const none = outcomeOf(logText(`q,${eleven.join(",")},w`, (row) => [row.s, ...eleven.map(() => 1), 2]));
    expect(noticesOf(none).map(({ text: said }) => said).join(" ")).toContain(" and 2 more"); // biome-ignore format: one case
  });

  it("that are nearly right are offered as an option that runs", () => {
    const asked = questionOf(whole, { columns: new Map([["current", "curent_a"]]) });
    expect(asked.options).toEqual(["--column current=#3"]);
  });
});
