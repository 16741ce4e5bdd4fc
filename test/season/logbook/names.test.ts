import { describe, expect, it } from "vitest";
import { harmlessName, inOrderOfFlying, logPath } from "../../../src/season/logbook/index.ts";
import { flightName } from "../../../src/season/logbook/names.ts";
import { secondsOfDay, startTime } from "../../../src/season/logbook/startTime.ts";

describe("names of files", () => {
  it.each([
    ["flight-03.csv", "flight-03.csv"],
    ["../../etc/passwd", "etc-passwd"],
    ["..\\..\\boot.ini", "boot.ini"],
    ["CON", "log-CON"],
    ["nul.csv", "log-nul.csv"],
    ["COM7.txt", "log-COM7.txt"],
    ["a\u0000b\u001B[31m.csv", "a-b-31m.csv"],
    ["\u202Egpj.csv", "gpj.csv"],
    [".hidden", "hidden"],
    ["trailing. ", "trailing"],
    ["x".repeat(300), "x".repeat(60)],
    ["飛行", "log"],
    ["", "log"],
    ["a/../b", "a-.-b"],
  ])("%j becomes %s", (name, expected) => {
    expect(harmlessName(name)).toBe(expected);
  });

  it("keep logs of one name apart", () => {
    expect(logPath("a.csv", "0123456789abcdef00")).toBe("logs/0123456789abcdef-a.csv");
  });

  it("give each flight its day and number, else its log's name", () => {
    const one = { index: 0, flights: 1 };
    const taken = new Set(["2026-06-14-1", "flight-03", "both-2"]);
    expect(flightName("2026-06-14", "x.csv", one, taken)).toBe("2026-06-14-2");
    expect(flightName(null, "Flight-03.csv", one, taken)).toBe("Flight-03-2");
    expect(flightName(null, "both.csv", { index: 0, flights: 2 }, taken)).toBe("both-1");
    expect(flightName(null, "both.csv", { index: 1, flights: 2 }, taken)).toBe("both-2-2");
  });
});

describe("startTime", () => {
  it.each([
    ["2026-04-11T16:05:25.100+02:00", null, null, "2026-04-11T16:05:25"],
    ["2026-05-10 14:20:17.200", null, null, "2026-05-10T14:20:17"],
    ["28.06.2026 17:05:50,000", null, null, "2026-06-28T17:05:50"],
    ["3/4/2026 9:05", null, "mdy", "2026-03-04T09:05:00"],
    ["3/4/2026 9:05", null, "dmy", "2026-04-03T09:05:00"],
    ["3/4/2026 9:05", "2026-07-01", null, "2026-07-01T09:05:00"],
    ["3/24/2026 9:05", null, null, "2026-03-24T09:05:00"],
    ["09:48:47.600", "2026-05-03", null, "2026-05-03T09:48:47"],
    ["09:48:47.600", null, null, null],
    [null, "2026-05-03", null, "2026-05-03"],
    [null, null, null, null],
    ["1749895241.5", null, null, null],
    ["2026-13-40 10:00", null, null, null],
  ] as const)("%j, date %j, order %j: %j", (startedAt, date, order, expected) => {
    expect(startTime(startedAt, date, order)).toBe(expected);
  });

  it("reads the clock's seconds", () => {
    expect(secondsOfDay("28.06.2026 17:05:50,000")).toBe(17 * 3600 + 5 * 60 + 50);
    expect(secondsOfDay("12.5")).toBeNull();
  });
});

describe("inOrderOfFlying", () => {
  const order = (entries: readonly (readonly [number, string | null])[]): readonly number[] =>
    inOrderOfFlying(entries.map(([sequence, startsAt]) => ({ sequence, startsAt }))).map(
      ({ sequence }) => sequence,
    );

  it("goes by start; what has none follows the one added before it", () => {
    expect(
      order([
        [1, "2026-06-15T10:00:00"],
        [2, null],
        [3, "2026-06-14T10:00:00"],
      ]),
    ).toEqual([3, 1, 2]);
    expect(
      order([
        [2, null],
        [1, null],
      ]),
    ).toEqual([1, 2]);
  });

  it("puts a day without a time after the flights of that day added before it", () => {
    const day = "2026-06-14";
    expect(
      order([
        [1, `${day}T10:00:00`],
        [2, day],
        [3, `${day}T09:00:00`],
      ]),
    ).toEqual([3, 1, 2]);
    expect(
      order([
        [1, day],
        [2, `${day}T09:00:00`],
      ]),
    ).toEqual([1, 2]);
  });

  it("does not depend on the order given", () => {
    const entries = [
      [1, "2026-06-14"],
      [2, "2026-06-14T08:00:00"],
      [3, null],
      [4, "2026-06-13"],
    ] as const;
    expect(order([...entries].reverse())).toEqual(order(entries));
  });
});
