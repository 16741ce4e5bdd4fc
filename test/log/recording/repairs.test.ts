import { describe, expect, test } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { median, scaledMad } from "../../../src/base/statistics/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { masked } from "../../../src/log/recording/sentences.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

type Channels = Partial<Record<ChannelName, number[]>>;

/** A smooth load: amps swing between 10 and 50, volts sag with them, 5 rows a second. */
function smooth(rows = 200): { current: number[]; packVoltage: number[]; shaftSpeed: number[] } {
  const current = Array.from({ length: rows }, (_, row) => 30 + 20 * Math.sin(row / 15));
  return {
    current,
    packVoltage: current.map((amps) => 25 - 0.03 * amps),
    shaftSpeed: current.map((amps) => 2000 * Math.sqrt(amps)),
  };
}

function record(channels: Channels, stepS = 0.2) {
  const rows = Object.values(channels)[0]!.length;
  const timeS = Array.from({ length: rows }, (_, row) => row * stepS);
  return recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
}

const rowsMasked = (recording: ReturnType<typeof record>) => recording.repairs.map((repair) => repair.row);

describe("impossible values", () => {
  test.each<[ChannelName, number]>([
    ["current", 6553.5],
    ["packVoltage", 655.35],
    ["packVoltage", 0],
    ["shaftSpeed", 65_535],
    ["controllerTemperature", -127],
  ])("%s %d is masked at any rate, with value and line", (channel, value) => {
    const channels: Channels = { ...smooth(), controllerTemperature: smooth().current };
    channels[channel]![100] = value;
    for (const stepS of [0.05, 5]) {
      const recording = record(channels, stepS);
      expect(recording.repairs).toEqual([{ channel, row: 100, line: 102, kind: "impossible", value }]);
      expect(recording.channels.get(channel)![100]).toBeNaN();
      const notice = recording.notices.find((one) => one.code === "impossible-masked")!;
      expect(notice).toMatchObject({ severity: "warning", count: 1, lines: [102] });
      expect(notice.text).toBe(masked("impossible", channel, [{ value, line: 102 }]));
      expect(notice.text).toContain("spike");
    }
  });

  test("a run of them is masked too, and the first 20 lines are listed", () => {
    const channels = smooth();
    for (let row = 50; row < 90; row++) channels.current[row] = 6553.5;
    const recording = record(channels);
    expect(recording.repairs).toHaveLength(40);
    const notice = recording.notices.find((one) => one.code === "impossible-masked")!;
    expect(notice.count).toBe(40);
    expect(notice.lines).toHaveLength(20);
  });

  test("limits are those of corrected values, the value told is the log's", () => {
    const timeS = Array.from({ length: 40 }, (_, row) => row * 0.2);
    const shaftSpeed = timeS.map((_, row) => 70_000 + row);
    shaftSpeed[20] = 700_000;
    const current = timeS.map(() => 30);
    const recording = recordLog(readLogOf({ timeS, channels: { shaftSpeed, current } }), {
      currentScale: 1.1,
      rpmDivisor: 7,
    });
    expect(recording.repairs).toMatchObject([{ row: 20, kind: "impossible" }]);
    expect(recording.repairs[0]!.value).toBeCloseTo(700_000, 6);
    expect(recording.channels.get("shaftSpeed")![0]).toBeCloseTo(10_000, 9);
    expect(recording.channels.get("current")![0]).toBeCloseTo(33, 9);
  });
});

describe("a lone spike", () => {
  function withSpike(change: (channels: ReturnType<typeof smooth>) => void, stepS = 0.2) {
    const channels = smooth();
    change(channels);
    return record(channels, stepS);
  }
  const addAmps = (at: number, amps: number) => (channels: ReturnType<typeof smooth>) => {
    channels.current[at]! += amps;
  };

  test("is masked, with value and line", () => {
    const recording = withSpike(addAmps(100, 25));
    expect(rowsMasked(recording)).toEqual([100]);
    expect(recording.repairs[0]).toMatchObject({ channel: "current", kind: "spike", line: 102 });
    const notice = recording.notices.find((one) => one.code === "spike-masked")!;
    expect(notice.text).toBe(masked("spike", "current", [recording.repairs[0]!]));
    expect(recording.rowsUsed).toBe(199);
    expect(recording.holes).toEqual([]);
  });

  test("downwards is masked too", () => {
    expect(rowsMasked(withSpike(addAmps(100, -25)))).toEqual([100]);
  });

  test("stays when the log has fewer than 4 rows a second", () => {
    expect(rowsMasked(withSpike(addAmps(100, 25), 0.25))).toEqual([100]);
    expect(rowsMasked(withSpike(addAmps(100, 25), 0.26))).toEqual([]);
  });

  test("stays within 10 % of the range of the channel (here 40 A)", () => {
    expect(rowsMasked(withSpike(addAmps(24, 3.5)))).toEqual([]);
    expect(rowsMasked(withSpike(addAmps(24, 5)))).toEqual([24]);
  });

  test("stays within 3 scaled MAD of seven noisy points", () => {
    const noise = [6, -5, 7, -6, 5, -7, 6];
    const noisy = (amps: number) => (channels: ReturnType<typeof smooth>) => {
      channels.current.forEach((_, row) => {
        channels.current[row]! += noise[row % 7]!;
      });
      channels.current[24]! += amps;
    };
    expect(rowsMasked(withSpike(noisy(12)))).not.toContain(24);
    expect(rowsMasked(withSpike(noisy(60)))).toContain(24);
  });

  test("stays when a neighbour shares the move", () => {
    const recording = withSpike((channels) => {
      channels.current[100]! += 25;
      channels.current[101]! += 12;
    });
    expect(rowsMasked(recording)).toEqual([]);
  });

  test.each<["packVoltage" | "shaftSpeed", number]>([
    ["packVoltage", -0.7],
    ["shaftSpeed", 1500],
  ])("stays when %s confirms it", (channel, move) => {
    const recording = withSpike((channels) => {
      channels.current[100]! += 25;
      channels[channel][100]! += move;
    });
    expect(rowsMasked(recording)).toEqual([]);
  });

  test("is masked when the volts rise with it: that is no load", () => {
    const recording = withSpike((channels) => {
      channels.current[100]! += 25;
      channels.packVoltage[100]! += 0.7;
    });
    expect(rowsMasked(recording).sort()).toEqual([100, 100]);
  });

  test.each([0, 1, 2, 197, 198, 199])("stays in row %i, among the first or last three", (row) => {
    expect(rowsMasked(withSpike(addAmps(row, 25)))).toEqual([]);
  });

  test.each([3, 196])("is masked in row %i", (row) => {
    expect(rowsMasked(withSpike(addAmps(row, 25)))).toEqual([row]);
  });

  test("stays among the first or last three rows beside a hole", () => {
    const channels = smooth();
    channels.current[98]! += 25;
    const timeS = channels.current.map((_, row) => row * 0.2 + (row >= 100 ? 30 : 0));
    const recording = recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
    expect(rowsMasked(recording)).toEqual([]);
  });

  test("of less than 1 A or 0.1 V stays", () => {
    const still = { current: new Array(60).fill(0.5), packVoltage: new Array(60).fill(25) };
    still.current[30] = 1.4;
    still.packVoltage[30] = 25.09;
    expect(rowsMasked(record(still))).toEqual([]);
  });

  test("in throttle stays: a flick of the stick is one", () => {
    const channels = { ...smooth(), throttle: new Array(200).fill(50) };
    channels.throttle[100] = 100;
    expect(rowsMasked(record(channels))).toEqual([]);
  });

  test("in a temperature that is updated slowly and held is none", () => {
    const held = smooth().current.map((_, row) => 30 + Math.floor(row / 5));
    expect(rowsMasked(record({ ...smooth(), controllerTemperature: held }))).toEqual([]);
  });
});

describe("published filter examples", () => {
  // Leys et al., Journal of Experimental Social Psychology 49 (2013), section 2: 1 3 3 6 8 10 10 1000.
  test("median 7 and scaled MAD 5.1891", () => {
    const values = [1, 3, 3, 6, 8, 10, 10, 1000];
    expect(median(values)).toBe(7);
    expect(scaledMad(values)).toBeCloseTo(5.1891, 4);
    expect(median(values) - 3 * scaledMad(values)).toBeCloseTo(-8.57, 2);
    expect(median(values) + 3 * scaledMad(values)).toBeCloseTo(22.57, 2);
  });

  // Own series, filter of Hampel (Journal of the American Statistical Association 69, 1974), window 7, limit 3.
  test("the two outliers of the worked series are found, as currents without witness", () => {
    const current = [10, 10.1, 9.9, 10.2, 10, 25, 10.1, 9.8, 10, 10.2, 9.9, 10.1, -3, 10, 10.1, 9.9];
    expect(rowsMasked(record({ current }))).toEqual([5, 12]);
  });

  // The plain filter flags this point, as the MAD is 0: the least move keeps it.
  test("one last digit in a steady series is no spike", () => {
    expect(rowsMasked(record({ current: [5, 5, 5, 5, 5.001, 5, 5, 5, 5] }))).toEqual([]);
  });
});

test("masking in the log's own arrays gives what masking in copies gives", () => {
  const { current, packVoltage, shaftSpeed } = smooth();
  current[50] = 6553.5;
  current[90] = 99;
  packVoltage[90] = 12;
  packVoltage[120] = 31;
  const probe = current.map((_, row) => (row > 60 && row < 66 ? 150 : 30 + row / 10));
  const log = readLogOf({
    timeS: current.map((_, row) => row * 0.2),
    channels: { current, packVoltage, shaftSpeed, controllerTemperature: probe },
  });
  const copied = recordLog(log, UNCORRECTED);
  const own = recordLog(log, UNCORRECTED, "inPlace");
  expect(copied.repairs.map(({ kind }) => kind)).toEqual(
    expect.arrayContaining(["impossible", "spike", "jump"]),
  );
  expect(own.channels).toEqual(copied.channels);
  expect(own.channels.get("current")!.buffer).toBe(log.channels.get("current")!.buffer);
  for (const key of ["repairs", "notices", "dead", "holes", "rowsUsed", "stepS"] as const) {
    expect(own[key]).toEqual(copied[key]);
  }
});
