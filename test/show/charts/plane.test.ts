import { describe, expect, it } from "vitest";
import {
  numberAxis,
  type Plane,
  planeDrawing,
  stepScales,
  valueScale,
  wholeTrace,
} from "../../../src/show/charts/index.ts";
import { type LabelTry, labelSpot, type Obstacle } from "../../../src/show/charts/labelSpot.ts";

const at = (xPercent: number, yPercent: number): LabelTry => ({
  xPercent,
  yPercent,
  dx: 0,
  dy: 4,
  anchor: "middle",
});
const words = [{ full: "limit 80 A, controller", short: "limit 80 A" }];

describe("labelSpot", () => {
  it("goes to the first place that covers nothing", () => {
    const line: Obstacle[] = Array.from({ length: 101 }, (_, x) => [x, 50]);
    const found = labelSpot([at(50, 50), at(50, 20), at(50, 80)], words, line);
    expect(found.spot).toEqual(at(50, 20));
    expect(found.isFree).toBe(true);
    const next = labelSpot([at(50, 20), at(50, 80)], words, [...line, ...found.covers]);
    expect(next.spot).toEqual(at(50, 80));
  });

  it("never prefers a place that is cut off, and says that no place is free", () => {
    const everywhere: Obstacle[] = Array.from({ length: 10_000 }, (_, k) => [k % 100, k / 100]);
    const found = labelSpot([at(2, 50), at(50, 50)], words, everywhere);
    expect(found.spot).toEqual(at(50, 50));
    expect(found.isFree).toBe(false);
  });

  it("takes shorter words where the long ones find no room", () => {
    const sides: Obstacle[] = Array.from({ length: 101 }, (_, y) => [72, y]);
    const short = { full: "limit 80 A", short: "limit 80 A" };
    expect(labelSpot([at(50, 50)], [...words, short], sides).words).toBe(short);
  });
});

const PLANE: Plane = {
  id: "sample",
  x: numberAxis("speed", 0, 8000),
  y: valueScale(0, 100, true),
  yTitle: "amps",
  bands: [],
  dots: {
    style: 2,
    points: [
      [1000, 10],
      [2000, 20],
    ],
  },
  lines: [{ id: "rising", words: "rising", style: 1, trace: wholeTrace([0, 8000], [0, 90]) }],
  walls: [
    { axis: "y", value: 95, words: "limit 95 A", source: "controller" },
    { axis: "x", value: 7000, words: "limit 7000", source: "propeller" },
  ],
  marks: [{ x: 4000, y: 45, shape: "ring", words: "here", barX: [3900, 4100], barY: null }],
};

describe("planeDrawing", () => {
  const drawing = planeDrawing(PLANE, { nameId: "n", descriptionId: "d" });

  it("puts a dot at each point and both walls with their words", () => {
    const { text } = drawing.plot;
    expect(text.match(/class="dots s2" d="(?:M\d+ \d+h0){2}"/)).not.toBeNull();
    expect(text.match(/class="wall"/g)).toHaveLength(2);
    expect(text).toContain("limit 95 A");
    expect(text).toContain("limit 7000");
    expect(text.match(/NaN|undefined/)).toBeNull();
  });

  it("names the axis and its ticks, and each line at its end", () => {
    expect(drawing.xAxis.text).toContain("speed");
    expect(drawing.xAxis.text).toContain(">2000<");
    expect(drawing.ends.text).toContain("rising");
  });

  it("leaves out the label of a mark that no free place is near", () => {
    const points = Array.from({ length: 6000 }, (_, k): [number, number] => [
      80 * (k % 100),
      (5 / 3) * Math.floor(k / 100),
    ]);
    const full = planeDrawing({ ...PLANE, dots: { style: 2, points } }, { nameId: "n", descriptionId: "d" });
    expect(drawing.plot.text).toContain(">here<");
    expect(full.plot.text).not.toContain(">here<");
  });
});

describe("stepScales", () => {
  it("puts every row on one scale and cuts what reaches far beyond the steps", () => {
    const rows = stepScales([
      { kind: "start", value: 10 },
      { kind: "step", from: 10, to: 20, low: -500, high: 22 },
      { kind: "end", value: 20, low: 19, high: 21 },
    ]).map(({ text }) => text);
    const ofStart = /<svg x="([\d.]+)%"/.exec(rows[0]!)?.[1];
    const ofBar = /class="step-bar" x="([\d.]+)%"/.exec(rows[1]!)?.[1];
    expect(ofBar).toBe(ofStart);
    expect(rows[1]!.match(/step-cut/g)).toHaveLength(1);
    expect(rows.join("")).not.toMatch(/NaN|-\d+%/);
  });

  it("draws a plan that was met to the digit", () => {
    const rows = stepScales([
      { kind: "start", value: 5 },
      { kind: "end", value: 5, low: 5, high: 5 },
    ]);
    expect(rows.map(({ text }) => text).join("")).not.toMatch(/NaN|Infinity/);
  });
});
