import { describe, expect, it } from "vitest";
import { readClock } from "../../../src/log/reading/clockText.ts";
import { dayOfCode } from "../../../src/log/reading/dateOrder.ts";

function unixSeconds(text: string): number {
  const clock = readClock(text);
  if (clock === null) return Number.NaN;
  return dayOfCode(clock.dateCode, "ymd") * 86_400 + clock.secondsOfDay;
}

describe("clocks and dates", () => {
  // RFC 3339 (Klyne and Newman, 2002) section 5.8, examples; Unix seconds computed from the definition.
  // The leap second is counted as the second after :59, so it falls on the next midnight.
  it.each([
    ["1985-04-12T23:20:50.52Z", 482_196_050.52],
    ["1996-12-19T16:39:57-08:00", 851_042_397],
    ["1990-12-31T23:59:60Z", 662_688_000],
    ["1990-12-31T15:59:60-08:00", 662_688_000],
    ["1937-01-01T12:00:27.87+00:20", -1_041_337_172.13],
  ])("RFC 3339: %s", (text, seconds) => expect(unixSeconds(text)).toBeCloseTo(seconds, 5));

  // RFC 3339 section 5.6: hours 00-23, days by month.
  it.each([
    "1985-04-31T10:00:00Z",
    "1985-04-12T24:00:00Z",
    "1985-13-01T10:00:00Z",
    "1985-04-12T23:60:00Z",
    "1985-04-12T23:20:60Z",
  ])("RFC 3339 has no %s", (text) => expect(unixSeconds(text)).toBeNaN());

  it.each([
    ["10:00:00", 36_000],
    ["10:00:00.200", 36_000.2],
    ["10:00:00,2", 36_000.2],
    ["9:05:07", 32_707],
    ["12:00:01 AM", 1],
    ["12:00:01 PM", 43_201],
    ["1:02:03 pm", 46_923],
  ])("clock %s", (text, seconds) => expect(readClock(text)?.secondsOfDay).toBeCloseTo(seconds, 9));

  it.each([
    "2026-05-01 03:46:40",
    "20260501T034640",
    "2026/05/01 03:46:40",
    "1-May-2026 03:46:40",
    "2026-05-01T03:46:40Z",
  ])("one day in many forms: %s", (text) => expect(unixSeconds(text)).toBe(1_777_607_200));

  it.each([
    "",
    "12",
    "12.5",
    "1.2.3.4",
    "abc",
    "25:00:00",
    "10:61:00",
    "31.02.2026",
    "EVENT 10:00:00",
    "10:00:00 x",
    "13:00:00 PM",
    "-1:00:00",
  ])("no clock: %j", (text) => expect(readClock(text)).toBeNull());
});

describe("a clock with a colon before its milliseconds", () => {
  it("reads 14:05:00:200 as 200 ms past, and no frames or two-part clocks so", () => {
    expect(readClock("14:05:00:200")!.secondsOfDay).toBeCloseTo(50_700.2, 9);
    expect(readClock("2026-06-14 14:05:00:200")!.secondsOfDay).toBeCloseTo(50_700.2, 9);
    for (const text of ["14:05:00:20", "14:05:200", "14:05:00:2000"]) expect(readClock(text)).toBeNull();
  });
});
