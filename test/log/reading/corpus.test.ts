import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { NO_READING_OPTIONS, type ReadingOptions, readLog } from "../../../src/log/reading/index.ts";
import { sharedFolder, withShared } from "../../support/shared.ts";

interface Case {
  readonly file: string;
  readonly verdict: "ok" | "note" | "warn" | "ask" | "reject";
  readonly must_report: readonly string[];
}

/** Strings that later steps report: clock steps, duplicates, gaps, wraps, spikes, dead and offset sensors. */
const REPORTED_LATER: ReadonlySet<string> = new Set([
  "time went back",
  "duplicate",
  "600",
  "gap",
  "20",
  "wrap",
  "spike",
  "negative",
  "starts",
  "resolution",
  "0",
]);
const LATER_CASES: ReadonlySet<string> = new Set(["d01_clock_back_30s.csv", "e19_all_zero_current.csv"]);

const folder = sharedFolder();
const corpus = folder === null ? "" : resolve(folder, "corpus");
const cases: readonly Case[] =
  folder === null ? [] : JSON.parse(readFileSync(resolve(corpus, "manifest.json"), "utf8")).cases;

function read(file: string, options: Partial<ReadingOptions> = {}) {
  const bytes = new Uint8Array(readFileSync(resolve(corpus, file)));
  return readLog(bytes, { ...NO_READING_OPTIONS, cells: 12, ...options }, []);
}

/** Charge by the trapezoid rule between rows that hold current and lie less than 2 s apart, mAh. */
function chargeMah(outcome: ReturnType<typeof read>): number {
  if (outcome.state !== "read") return Number.NaN;
  const { timeS, channels, rows } = outcome.log;
  const amps = channels.get("current")!;
  let coulombs = 0;
  for (let row = 1; row < rows; row++)
    coulombs += ((amps[row]! + amps[row - 1]!) / 2) * (timeS[row]! - timeS[row - 1]!);
  return coulombs / 3.6;
}

describe.skipIf(folder === null)(withShared("corpus of bad logs, read"), () => {
  it.each(cases)("$file gives the state of its verdict", ({ file, verdict, must_report }) => {
    const outcome = read(file);
    const state = verdict === "reject" ? "refusal" : verdict === "ask" ? "question" : "read";
    const notices = outcome.state === "read" ? outcome.log.notices : outcome.notices;
    const texts = notices.map((notice) => notice.text).join("\n");
    expect(outcome.state, texts).toBe(state);
    if (!LATER_CASES.has(file)) {
      for (const wanted of must_report) if (!REPORTED_LATER.has(wanted)) expect(texts).toContain(wanted);
    }
    if (verdict === "ok") expect(notices.filter((notice) => notice.severity !== "note")).toEqual([]);
    if (outcome.state === "read")
      expect([...outcome.log.channels.keys()]).toEqual(expect.arrayContaining(["packVoltage", "current"]));
  });

  it.each([
    ["b14_unquoted_decimal_comma_in_comma_csv.csv", { decimalMark: "comma", delimiter: "," }],
    ["d17_frozen_clock.csv", { rateHz: 5 }],
    ["d19_no_time_column.csv", { rateHz: 5 }],
  ] as const)("%s is settled by its option", (file, options) => {
    expect(chargeMah(read(file, options))).toBeCloseTo(896.177777778, 6);
  });

  it.each(cases.filter((each) => each.verdict === "ok" && !each.file.startsWith("e23")))(
    "$file holds the charge of the clean log",
    ({ file }) => {
      expect(chargeMah(read(file)) / 896.177777778).toBeCloseTo(1, 5);
    },
  );
});
