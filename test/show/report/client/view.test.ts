import { describe, expect, it } from "vitest";
import {
  clockTenths,
  momentWords,
  nearestSample,
  panelReading,
  sampleTimes,
} from "../../../../src/show/report/client/reading.ts";
import { fittedView, isWhole, pannedView, zoomedView } from "../../../../src/show/report/client/view.ts";

const WHOLE = { fromS: 10, toS: 110 };

describe("the view", () => {
  it("zooms around a moment that keeps its place", () => {
    expect(zoomedView(WHOLE, WHOLE, 0.5, 30)).toEqual({ fromS: 20, toS: 70 });
  });

  it("never leaves the log nor gets shorter than a second", () => {
    expect(fittedView({ fromS: 100, toS: 150 }, WHOLE)).toEqual({ fromS: 60, toS: 110 });
    expect(fittedView({ fromS: 50, toS: 50 }, WHOLE)).toEqual({ fromS: 50, toS: 51 });
    expect(fittedView({ fromS: 0, toS: 0.4 }, { fromS: 0, toS: 0.5 })).toEqual({ fromS: 0, toS: 0.5 });
  });

  it("moves earlier and later, and stops at the ends", () => {
    expect(pannedView({ fromS: 20, toS: 40 }, WHOLE, 0.25)).toEqual({ fromS: 25, toS: 45 });
    expect(pannedView({ fromS: 12, toS: 32 }, WHOLE, -0.25)).toEqual({ fromS: 10, toS: 30 });
  });

  it("knows when all is on show", () => {
    expect(isWhole(WHOLE, WHOLE)).toBe(true);
    expect(isWhole({ fromS: 11, toS: 110 }, WHOLE)).toBe(false);
  });
});

describe("the reading", () => {
  it("finds the nearest sample", () => {
    const times = sampleTimes({ fromS: 5, stepsMs: [0, 100, 100, 900] });
    expect(times).toEqual([5, 5.1, 5.2, 6.1]);
    expect([5.04, 5.06, 99, -1].map((at) => nearestSample(times, at))).toEqual([0, 1, 3, 0]);
  });

  it("carries tenths over into seconds and minutes", () => {
    expect([0, 59.96, 72.34, -3.2].map(clockTenths)).toEqual(["0:00.0", "1:00.0", "1:12.3", "−0:03.2"]);
  });

  it("names the phase and the time from take-off", () => {
    const data = {
      fromS: 0,
      toS: 100,
      takeOffS: 52,
      stepsMs: [],
      allRows: 0,
      panels: [],
      phases: [
        { words: "taxi", fromS: 0, toS: 52 },
        { words: "flight", fromS: 52, toS: 100 },
      ],
    };
    expect(momentWords(data, 40)).toBe("0:40.0, taxi, 12.0 s before take-off");
    expect(momentWords(data, 100)).toBe("1:40.0, flight, 48.0 s after take-off");
  });

  it("says the value with its unit, each series by name, and a missing value as missing", () => {
    const series = (words: string, values: (number | null)[]) => ({ id: words, words, values, gapsMs: [] });
    const panel = {
      id: "x",
      title: "X",
      unit: "V",
      decimals: 2,
      scale: [0, 5] as const,
      series: [series("lowest", [351, null])],
    };
    expect(panelReading(panel, 0)).toBe("3.51 V");
    expect(panelReading(panel, 1)).toBe("no value");
    expect(panelReading({ ...panel, series: [...panel.series, series("highest", [360, 361])] }, 0)).toBe(
      "lowest 3.51 V, highest 3.60 V",
    );
  });
});
