import { describe, expect, it } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { tooFewSteps } from "../../../src/flight/analysis/identifiedSentences.ts";
import { identifyPackResistance } from "../../../src/flight/analysis/packResistance.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";

const STEP_S = 0.1;

/** Volts of a pack of 40 mohm at once and 10 mohm more with a time constant of 2.5 s, under given amps. */
function recordingOf(amps: readonly number[], delayRows = 0, noiseV = 0.005): Recording {
  const noise = seededRandom(5).normal;
  const volts = new Float64Array(amps.length);
  let slow = 0;
  let charge = 0;
  amps.forEach((amp, row) => {
    slow += (1 - Math.exp(-STEP_S / 2.5)) * (amp - slow);
    charge += amp * STEP_S;
    volts[row] = 25.2 - charge / 8000 - 0.04 * amp - 0.01 * slow + noiseV * noise();
  });
  const current = Float64Array.from(amps, (_, row) => amps[Math.max(0, row - delayRows)]!);
  return {
    rows: amps.length,
    dataLines: amps.length,
    rowsUsed: amps.length,
    durationS: (amps.length - 1) * STEP_S,
    timeS: Float64Array.from(amps, (_, row) => row * STEP_S),
    channels: new Map([
      ["packVoltage", volts],
      ["current", current],
    ]),
    lineOfRow: (row) => row + 2,
    clockTextOfRow: () => null,
    stepS: STEP_S,
    holes: [],
    repairs: [],
    dead: [],
    notices: [],
  };
}

/** Loads that change every few seconds. */
function livelyAmps(rows: number): number[] {
  const random = seededRandom(3);
  const amps: number[] = [];
  let held = 0;
  while (amps.length < rows) {
    held = random.between(5, 60);
    for (let k = random.whole(20, 70); k > 0; k--) amps.push(held);
  }
  return amps.slice(0, rows);
}

const all = (recording: Recording) => ({ firstRow: 0, lastRow: recording.rows - 1 });
const TRUE_MOHM = 40 + 10 * (1 - Math.exp(-1 / 2.5));

describe("identifyPackResistance", () => {
  it("finds the drop per ampere one second after a step, inside its interval", () => {
    const recording = recordingOf(livelyAmps(2000));
    const { after1S, byStepsMohm, differenceMohm } = identifyPackResistance(
      recording,
      all(recording),
      NO_FACTS,
    );
    expect(after1S.value).toBeCloseTo(TRUE_MOHM, 0);
    expect(byStepsMohm).toBeGreaterThan(0.9 * TRUE_MOHM);
    expect(byStepsMohm).toBeLessThan(1.1 * TRUE_MOHM);
    expect(differenceMohm).toBeCloseTo(after1S.value! - byStepsMohm!, 9);
  });

  it("finds a current that is reported late, and the same resistance", () => {
    const recording = recordingOf(livelyAmps(2000), 2);
    const { after1S, timing } = identifyPackResistance(recording, all(recording), NO_FACTS);
    expect(timing?.shiftS).toBeCloseTo(0.2, 1);
    expect(after1S.value! / TRUE_MOHM).toBeCloseTo(1, 1);
  });

  it("gives no resistance without changes of load, and says so", () => {
    const recording = recordingOf(Array.from({ length: 600 }, (_, row) => (row < 50 ? 0 : 40)));
    const { after1S, picture } = identifyPackResistance(recording, all(recording), NO_FACTS);
    expect(after1S).toEqual({ value: null, unit: "mohm", why: tooFewSteps(1, 3) });
    expect(picture).toBeNull();
  });

  it("gives no resistance where the volts are noise", () => {
    const recording = recordingOf(livelyAmps(400), 0, 20);
    const { after1S } = identifyPackResistance(recording, all(recording), NO_FACTS);
    expect(after1S.value).toBeNull();
  });

  it("draws its lines through the points of its picture, and keeps the lowest", () => {
    const recording = recordingOf(livelyAmps(2000));
    const { picture } = identifyPackResistance(recording, all(recording), NO_FACTS);
    const { points, lines, lowest, bands } = picture!;
    expect(lines.map(({ afterS }) => afterS)).toEqual([1, 10, 60]);
    const [start, end] = lines[1]!.ends;
    // Just after a step the slow part (10 mohm at 60 A or less) has not answered yet.
    const slowPartV = 0.01 * 60;
    for (const [amps, volts] of points) {
      const onLine = start[1] + ((end[1] - start[1]) * amps) / end[0];
      expect(Math.abs(volts - onLine)).toBeLessThan(slowPartV);
    }
    expect(points.length).toBeGreaterThan(50);
    expect(points.length).toBeLessThanOrEqual(1536);
    const volts = points.map(([, packV]) => packV);
    // One cell of the grid high.
    expect(Math.min(...volts) - lowest.packV).toBeLessThan((Math.max(...volts) - lowest.packV) / 30);
    expect(lowest.belowV).toBeCloseTo(start[1] - lowest.packV, 9);
    expect(bands.reduce((sum, { samples }) => sum + samples, 0)).toBe(recording.rows);
  });
});
