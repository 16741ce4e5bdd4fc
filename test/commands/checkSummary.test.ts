import { describe, expect, it } from "vitest";
import { checkSummary } from "../../src/apps/commands/checkSummary.ts";
import { inOrder, noticeCount, noticeLines } from "../../src/apps/commands/noticeLines.ts";
import type { Notice } from "../../src/base/notices/index.ts";
import { quantityText } from "../../src/base/quantity/index.ts";
import { MEASURE_WORDS } from "../../src/flight/analysis/index.ts";
import { sampleInput, sampleInputOfTwo } from "../support/sampleCheck.ts";

const END = { report: "flight-03.html", next: "tallywatt columns flight-03.csv" };

describe("the summary of a check", () => {
  const { check } = sampleInput().checked;
  const [flight] = check.flights;
  if (!flight) throw new Error("the sample holds no flight");

  it("has at most eight lines: what was read, the headline, main numbers, notices, report, next", () => {
    const lines = checkSummary("flight-03.csv", check, END);
    expect(lines.length).toBeLessThanOrEqual(8);
    expect(lines[0]).toContain(`${check.log.rowsUsed} of ${check.log.rows} rows`);
    expect(lines[1]).toBe(flight.headline);
    expect(lines.at(-2)).toBe("Report: flight-03.html");
    expect(lines.at(-1)).toBe("Next: tallywatt columns flight-03.csv");
  });

  it("writes each number as the report does, with unit and interval", () => {
    const text = checkSummary("flight-03.csv", check, END).join("\n").toLowerCase();
    for (const name of ["chargeUsedMah", "peakCurrentA"] as const) {
      expect(text).toContain(`${MEASURE_WORDS[name]} ${quantityText(flight.measures[name])}`.toLowerCase());
    }
  });

  it("says why a main number is not known, and leaves out the others", () => {
    const measures = {
      ...flight.measures,
      chargeUsedMah: { value: null, unit: "mAh", why: "the current sensor is dead" },
      controllerPeakC: { value: null, unit: "degC", why: "no probe" },
    };
    const text = checkSummary("a.csv", { ...check, flights: [{ ...flight, measures }] }, END).join("\n");
    expect(text).toContain("not known: the current sensor is dead");
    expect(text).not.toContain("no probe");
  });

  it("calls numbers of a current that nobody logged estimated, and those of a bridged hole not", () => {
    const text = (measures: typeof flight.measures) =>
      checkSummary("a.csv", { ...check, flights: [{ ...flight, measures }] }, END).join("\n");
    const guess = (value: number, unit: string) =>
      ({ value, low: 0.7 * value, high: 1.3 * value, unit, basis: "estimated" }) as const;
    const bridged = { ...flight.measures, chargeUsedMah: guess(4000, "mAh") };
    expect(text(bridged)).not.toContain("stimated");
    const unlogged = {
      ...bridged,
      peakCurrentA: guess(70, "A"),
      chargeCoveredMah: { value: null, unit: "mAh", why: "no current channel" },
    };
    expect(text(unlogged)).toContain("stimated charge used 4000 ± 1200 mAh");
    expect(text(unlogged)).toContain("stimated peak current");
  });

  it("keeps to eight lines for two flights and for many", () => {
    const two = sampleInputOfTwo().checked.check;
    const many = { ...two, flights: Array.from({ length: 9 }, () => flight) };
    for (const one of [two, many]) expect(checkSummary("a.csv", one, END).length).toBeLessThanOrEqual(8);
    expect(checkSummary("a.csv", many, END).join("\n")).toContain("6 more flights");
    expect(checkSummary("a.csv", two, END)[1]).toMatch(/^Flight 1: /);
  });

  it("never prints a bare hole in a sentence", () => {
    expect(checkSummary("a.csv", check, END).join("\n")).not.toMatch(/undefined|NaN|null|\[object/);
  });
});

describe("notices on standard error", () => {
  const notice = (severity: Notice["severity"], text: string): Notice => ({ code: "x", severity, text });

  it("take at most five lines, with options ready to paste", () => {
    const options = ["--rate 5", "--column time=#1", "--column time=#2", "--column time=#3"];
    const lines = noticeLines(
      "a.csv",
      { ...notice("question", "Which?"), options },
      (option) => `tallywatt ${option}`,
    );
    expect(lines[0]).toBe("a.csv: a choice is needed: Which?");
    expect(lines.slice(1)).toEqual(options.slice(0, 3).map((option) => `    try: tallywatt ${option}`));
    expect(lines.length).toBeLessThanOrEqual(5);
  });

  it("come gravest first and the same sentence once", () => {
    const all = [notice("note", "n"), notice("warning", "w"), notice("note", "n"), notice("refusal", "r")];
    expect(inOrder(all).map(({ text }) => text)).toEqual(["r", "w", "n"]);
  });

  it.each([
    [[], "no warnings"],
    [[notice("warning", "a")], "1 warning"],
    [[notice("warning", "a"), notice("warning", "b"), notice("note", "c")], "2 warnings and 1 note"],
  ])("are counted: %j", (notices, expected) => {
    expect(noticeCount(notices)).toBe(expected);
  });

  it("stay on one line whatever the log put into them", () => {
    const lines = noticeLines("a.csv", notice("warning", "two\nlines \u001B[2J"), () => "");
    expect(lines).toEqual(["a.csv: warning: two lines \\u001b[2J"]);
  });
});
