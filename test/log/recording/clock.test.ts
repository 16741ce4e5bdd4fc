import { describe, expect, test } from "vitest";
import { recordLog } from "../../../src/log/recording/index.ts";
import { clockStoodStill, timeWentBack } from "../../../src/log/recording/sentences.ts";
import { seededRandom } from "../../generator/index.ts";
import { type LogColumns, readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

/** Times with a current that differs from row to row, so that no two rows are the same. */
function record(timeS: readonly number[], more: Partial<LogColumns> = {}) {
  const current = timeS.map((_, row) => 10 + 5 * Math.sin(row / 5));
  return recordLog(readLogOf({ timeS, channels: { current }, ...more }), UNCORRECTED);
}

function every(stepS: number, rows: number, startS = 0): number[] {
  return Array.from({ length: rows }, (_, row) => Number((startS + row * stepS).toFixed(6)));
}

const codes = (recording: { notices: readonly { code: string }[] }) =>
  recording.notices.map((notice) => notice.code);

describe("a clock that needs no repair", () => {
  test("starts at 0 and keeps its steps", () => {
    const recording = record(every(0.2, 50, 17));
    expect(recording.timeS[0]).toBe(0);
    expect(recording.timeS[49]).toBeCloseTo(9.8, 9);
    expect(recording.durationS).toBeCloseTo(9.8, 9);
    expect(recording.stepS).toBeCloseTo(0.2, 9);
    expect(recording.notices).toEqual([]);
  });

  test("hands the notices of the reading on, before its own", () => {
    const notice = { code: "footer", severity: "note", text: "x" } as const;
    const recording = record([...every(0.2, 5), 0.5, ...every(0.2, 40, 5)], { notices: [notice] });
    expect(recording.notices[0]).toBe(notice);
    expect(recording.notices.length).toBeGreaterThan(1);
  });

  test("an empty log and a log of one row give an empty recording, not NaN", () => {
    expect(record([])).toMatchObject({ rows: 0, rowsUsed: 0, durationS: 0, stepS: 0 });
    expect(record([4])).toMatchObject({ rows: 1, rowsUsed: 1, durationS: 0, stepS: 0 });
  });
});

describe("several rows per whole second", () => {
  const wholeSeconds = { clock: { resolutionS: 1 } };

  test("are spread evenly up to the next second", () => {
    const recording = record(every(0.2, 100).map(Math.floor), wholeSeconds);
    recording.timeS.forEach((time, row) => {
      expect(time).toBeCloseTo(row * 0.2, 9);
    });
    expect(codes(recording)).toEqual(["rows-share-a-stamp"]);
  });

  test("a first second with fewer rows is the end of that second", () => {
    const recording = record(every(0.2, 97, 0.6).map(Math.floor), wholeSeconds);
    expect(recording.timeS[1]).toBeCloseTo(0.2, 2);
    expect(recording.durationS).toBeCloseTo(19.2, 1);
  });

  test("unchanged readings inside a second are no duplicates", () => {
    const timeS = every(0.25, 80).map(Math.floor);
    const current = timeS.map((_, row) => (row < 60 ? 0.6 : row));
    const recording = recordLog(
      readLogOf({ timeS, channels: { current }, clock: { resolutionS: 1 } }),
      UNCORRECTED,
    );
    expect(recording.rowsUsed).toBe(80);
    expect(recording.durationS).toBeCloseTo(19.75, 9);
  });
});

describe("a clock that starts again", () => {
  test("midnight is counted on", () => {
    const timeS = every(0.2, 100, 86_390).map((time) => time % 86_400);
    const recording = record(timeS, { clock: { kind: "timeOfDay", wrapS: 86_400 } });
    expect(recording.durationS).toBeCloseTo(19.8, 6);
    expect(recording.notices.map((notice) => notice.severity)).toEqual(["note"]);
    expect(recording.notices[0]!.text).toContain("midnight");
  });

  test("a counter of 32 bits in milliseconds wraps", () => {
    const wrapS = 2 ** 32 / 1000;
    const timeS = every(0.2, 100, wrapS - 10).map((time) => time % wrapS);
    const recording = record(timeS, { clock: { wrapS } });
    expect(recording.durationS).toBeCloseTo(19.8, 6);
    expect(recording.notices[0]!.text).toContain("wrap");
  });
});

describe("a clock that was set", () => {
  test("back: time goes on by one median step, with the line", () => {
    const recording = record([...every(0.2, 300), ...every(0.2, 300, 30)]);
    expect(recording.durationS).toBeCloseTo(119.8, 6);
    expect(recording.holes).toEqual([]);
    const notice = recording.notices[0]!;
    expect(notice).toMatchObject({ code: "time-went-back", severity: "warning", count: 1, lines: [302] });
    expect(notice.text).toBe(timeWentBack([30], [302]));
    expect(notice.text).toContain("ime went back");
  });

  test.each([0.3, 0.5, 1, 30.1])("back by %s s, so that rows fall between rows: no row is sorted", (byS) => {
    const recording = record([...every(0.2, 300), ...every(0.2, 300, 60 - byS)]);
    expect(codes(recording)).toEqual(["time-went-back"]);
    expect(recording.durationS).toBeCloseTo(119.8, 6);
    expect(recording.rowsUsed).toBe(600);
  });

  test("forward by hours: a hole of unknown length", () => {
    const recording = record([...every(0.2, 100), ...every(0.2, 100, 7220)]);
    expect(recording.holes).toHaveLength(1);
    expect(recording.holes[0]).toMatchObject({ rowBefore: 99, rowAfter: 100, isUnknownLength: true });
    expect(codes(recording)).toEqual(["time-jumped", "gap-unknown-length"]);
  });

  test("forward by years: the hole is not as long as that", () => {
    const recording = record([...every(0.2, 100), ...every(0.2, 100, 1.7e9)]);
    expect(recording.holes[0]!.isUnknownLength).toBe(true);
    expect(recording.durationS).toBeLessThan(86_400);
  });

  test("forward by 20 s: a hole of that length", () => {
    const recording = record([...every(0.2, 100), ...every(0.2, 100, 40)]);
    expect(recording.holes).toMatchObject([{ rowBefore: 99, rowAfter: 100, isUnknownLength: false }]);
    expect(recording.holes[0]!.endS - recording.holes[0]!.startS).toBeCloseTo(20.2, 6);
    expect(recording.notices[0]).toMatchObject({ code: "gap", lines: [102] });
    expect(recording.notices[0]!.text).toContain("20.2 s between lines 101 and 102");
  });
});

describe("rows in the wrong place", () => {
  test("a few late rows are sorted, and said", () => {
    const timeS = every(0.2, 100);
    [timeS[50], timeS[51]] = [timeS[51]!, timeS[50]!];
    const recording = record(timeS);
    expect(codes(recording)).toEqual(["rows-out-of-order"]);
    expect(recording.notices[0]!.lines).toEqual([53]);
    expect(recording.timeS[51]).toBeCloseTo(10.2, 9);
    expect(recording.lineOfRow(50)).toBe(53);
    expect(recording.channels.get("current")![50]).toBeCloseTo(10 + 5 * Math.sin(51 / 5), 9);
  });

  test("two swapped blocks are sorted", () => {
    const timeS = every(0.2, 100);
    const swapped = [
      ...timeS.slice(0, 40),
      ...timeS.slice(50, 60),
      ...timeS.slice(40, 50),
      ...timeS.slice(60),
    ];
    const recording = record(swapped);
    expect(recording.durationS).toBeCloseTo(19.8, 9);
    expect(recording.lineOfRow(40)).toBe(52);
  });

  test("the first row may be late", () => {
    const timeS = every(0.2, 20);
    const recording = record([timeS[1]!, timeS[0]!, ...timeS.slice(2)]);
    expect(recording.lineOfRow(0)).toBe(3);
    expect(recording.durationS).toBeCloseTo(3.8, 9);
  });

  test("damaged stamps all over a long log are told apart without going over the log for each", () => {
    const timeS = every(0.02, 600_000).map((time, row) => (row % 10 === 3 ? 0 : time));
    const recording = record(timeS);
    expect(recording.rowsUsed).toBe(540_000);
    expect(recording.notices).toMatchObject([{ code: "time-damaged", count: 60_000 }]);
  }, 120_000);

  test.each([5000, 0])("one damaged stamp (%s s) costs that row only", (stamp) => {
    const timeS = every(0.2, 100, 10);
    timeS[50] = stamp;
    const recording = record(timeS);
    expect(codes(recording)).toEqual(["time-damaged"]);
    expect(recording.rowsUsed).toBe(99);
    expect(recording.durationS).toBeCloseTo(19.8, 9);
  });

  test("rows whose time is missing are left out and counted", () => {
    const timeS = every(0.2, 100);
    timeS[7] = Number.NaN;
    const recording = record(timeS);
    expect(recording.rowsUsed).toBe(99);
    expect(recording.notices[0]).toMatchObject({ code: "time-missing", count: 1, lines: [9] });
  });
});

describe("rows written twice", () => {
  test("every row twice: each counts once", () => {
    const timeS = every(0.2, 600).flatMap((time) => [time, time]);
    const current = timeS.map((time) => 20 + Math.round(time));
    const recording = recordLog(readLogOf({ timeS, channels: { current } }), UNCORRECTED);
    expect(recording.rowsUsed).toBe(600);
    expect(recording.dataLines).toBe(1200);
    expect(recording.notices[0]).toMatchObject({ code: "duplicate-rows", count: 600 });
    expect(recording.notices[0]!.text).toContain("600 duplicate rows");
    expect(recording.notices[0]!.lines).toHaveLength(20);
  });

  test("a block written twice counts once, however long", () => {
    const rows = Array.from({ length: 300 }, (_, row) => row);
    const written = [...rows.slice(0, 200), ...rows.slice(50, 200), ...rows.slice(200)];
    const recording = recordLog(
      readLogOf({
        timeS: written.map((row) => row * 0.2),
        channels: { current: written.map((row) => row % 13) },
      }),
      UNCORRECTED,
    );
    expect(recording.rowsUsed).toBe(300);
    expect(recording.notices[0]).toMatchObject({ code: "duplicate-rows", count: 150 });
  });

  test("the same stamp with other values is another row", () => {
    const timeS = every(0.2, 100);
    timeS[50] = timeS[49]!;
    const recording = record(timeS);
    expect(recording.rowsUsed).toBe(100);
    expect(recording.timeS[50]).toBeCloseTo(10, 9);
    expect(codes(recording)).toEqual(["rows-share-a-stamp"]);
  });
});

describe("a clock that stands still", () => {
  test("and catches up: its rows are spread over the time it lost", () => {
    const timeS = every(0.2, 100).map((time, row) => (row > 20 && row < 60 ? 4 : time));
    const recording = record(timeS);
    expect(recording.timeS[40]).toBeCloseTo(8, 9);
    expect(recording.durationS).toBeCloseTo(19.8, 9);
  });

  test("and does not catch up: time goes on by the usual step, and the loss is said", () => {
    const timeS = [...every(0.2, 50), ...new Array(50).fill(9.8), ...every(0.2, 50, 10)];
    const recording = record(timeS);
    expect(recording.durationS).toBeCloseTo(29.8, 6);
    const notice = recording.notices.find((one) => one.code === "clock-stood-still")!;
    expect(notice.text).toBe(clockStoodStill([10], [51]));
  });
});

describe("whatever the clock does", () => {
  const SEEDS = Array.from({ length: 200 }, (_, index) => index + 1);

  test.each(SEEDS)("time rises strictly from 0 and no row is invented (seed %i)", (seed) => {
    const random = seededRandom(seed);
    const timeS = every(0.1 + 0.1 * random.next(), 200).map((time) => {
      const luck = random.next();
      if (luck < 0.02) return Number.NaN;
      if (luck < 0.05) return time - 3 * random.next();
      if (luck < 0.07) return time * 10 * random.next();
      return luck < 0.12 ? Math.floor(time) : time;
    });
    const recording = record(timeS);
    expect(recording.timeS[0]).toBe(0);
    for (let row = 1; row < recording.rows; row++) {
      expect(recording.timeS[row]).toBeGreaterThan(recording.timeS[row - 1]!);
    }
    const lines = new Set(Array.from({ length: recording.rows }, (_, row) => recording.lineOfRow(row)));
    expect(lines.size).toBe(recording.rows);
  });

  test("the log is not changed", () => {
    const log = readLogOf({ timeS: [0, 1, 0.5, 9, 9, 2], channels: { current: [1, 2, 3, 4, 9000, 6] } });
    const timeS = log.timeS.slice();
    const current = log.channels.get("current")!.slice();
    recordLog(log, { currentScale: 2, rpmDivisor: 7 });
    expect(log.timeS).toEqual(timeS);
    expect(log.channels.get("current")).toEqual(current);
  });
});
