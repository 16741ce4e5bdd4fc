import { describe, expect, test } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { negativeOffsetA, recordLog, restCurrentA, smallestStep } from "../../../src/log/recording/index.ts";
import { readLogOf, UNCORRECTED } from "../../support/readLogOf.ts";

/** 40 s of rest, 80 s of changing load, 40 s of rest, at 5 Hz. */
function load(): number[] {
  return Array.from({ length: 800 }, (_, row) =>
    row < 200 || row >= 600 ? 0.6 : Number((30 + 15 * Math.sin(row / 20)).toFixed(1)),
  );
}

function record(channels: Partial<Record<ChannelName, readonly number[]>>) {
  const rows = Object.values(channels)[0]!.length;
  const timeS = Array.from({ length: rows }, (_, row) => row * 0.2);
  return recordLog(readLogOf({ timeS, channels }), UNCORRECTED);
}

const constant = (value: number) => load().map(() => value);
const volts = () => load().map((amps) => Number((25 - 0.03 * amps).toFixed(2)));
const revs = () => load().map((amps) => (amps < 1 ? 0 : Math.round(900 * Math.sqrt(amps))));
const dead = (recording: ReturnType<typeof record>) => recording.dead.map((one) => one.channel);
const codes = (recording: ReturnType<typeof record>) => recording.notices.map((notice) => notice.code);

describe("a dead sensor", () => {
  test("current at 0 while the shaft turns", () => {
    const recording = record({ current: constant(0), packVoltage: volts(), shaftSpeed: revs() });
    expect(dead(recording)).toEqual(["current"]);
    expect(recording.dead[0]!.why).toContain("reads 0 A in every row while the shaft turns");
    const notice = recording.notices.find((one) => one.code === "dead-sensor")!;
    expect(notice.severity).toBe("warning");
    expect(notice.text).toContain("current sensor is dead: it reads 0 A");
  });

  test("current at another single value is as dead", () => {
    expect(dead(record({ current: constant(12.3), shaftSpeed: revs() }))).toEqual(["current"]);
  });

  test("current at 0 in a log at rest is alive", () => {
    expect(
      dead(record({ current: constant(0), packVoltage: constant(25), shaftSpeed: constant(0) })),
    ).toEqual([]);
  });

  test.each<ChannelName>(["packVoltage", "cellVoltage2", "shaftSpeed"])(
    "%s that never moves under load",
    (channel) => {
      const value = channel === "packVoltage" ? 25 : channel === "shaftSpeed" ? 0 : 4.1;
      expect(dead(record({ current: load(), [channel]: constant(value) }))).toEqual([channel]);
    },
  );

  test.each<ChannelName>(["controllerTemperature", "motorTemperature", "packTemperature"])(
    "%s that never changes while current flows",
    (channel) => {
      expect(dead(record({ current: load(), [channel]: constant(25) }))).toEqual([channel]);
      expect(dead(record({ current: constant(0.6), [channel]: constant(25) }))).toEqual([]);
    },
  );

  test("air that keeps its temperature and a held, slow probe are alive", () => {
    const held = load().map((_, row) => 25 + Math.floor(row / 100));
    expect(
      dead(record({ current: load(), ambientTemperature: constant(18), controllerTemperature: held })),
    ).toEqual([]);
  });

  test("a column whose every value is impossible is one dead sensor, not a list of spikes", () => {
    const recording = record({
      current: load(),
      controllerTemperature: constant(-127),
      cellVoltage7: constant(0),
    });
    expect(dead(recording)).toEqual(["controllerTemperature", "cellVoltage7"]);
    expect(recording.repairs).toEqual([]);
    expect(recording.channels.has("cellVoltage7")).toBe(false);
    expect(recording.dead[0]!.why).toContain("it reads -127");
  });

  test.each(["packVoltage", "shaftSpeed"] as const)(
    "current that is negative under load is turned where %s shows that it is reversed, and said",
    (channel) => {
      const current = load().map((amps) => (amps < 1 ? -amps : -2 * amps));
      const logged = { current, [channel]: channel === "packVoltage" ? volts() : revs() };
      const recording = record(logged);
      expect(dead(recording)).toEqual([]);
      expect([...recording.channels.get("current")!]).toEqual(current.map((amps) => -amps));
      expect(codes(recording)).toEqual(["current-reversed"]);
      expect(recording.repairs).toEqual([]);
    },
  );

  test("a repair of a turned current tells what the log said", () => {
    const current = load().map((amps, row) => (row === 400 ? -6553.5 : -amps));
    const [repair] = record({ current, packVoltage: volts() }).repairs;
    expect(repair).toMatchObject({ channel: "current", value: -6553.5 });
  });

  test("current that is negative under load with nothing to show why: no sum rests on it", () => {
    const recording = record({ current: load().map((amps) => -amps), altitude: volts() });
    expect(dead(recording)).toEqual(["current"]);
    expect(recording.dead[0]!.why).toContain("reversed");
    expect(dead(record({ current: load().map((amps) => amps - 3), packVoltage: volts() }))).toEqual([]);
  });

  test("says nothing on fewer than ten values", () => {
    const current = load().map((_, row) => (row < 9 ? 0 : Number.NaN));
    expect(dead(record({ current, shaftSpeed: revs() }))).toEqual([]);
  });
});

describe("a sensor that sticks", () => {
  test("current at its limit while the volts move", () => {
    const current = load().map((amps) => Math.min(amps, 28));
    const long = current.map((amps, row) => (row > 300 && row < 400 ? 28 : amps));
    const recording = record({ current: long, packVoltage: volts() });
    expect(codes(recording)).toEqual(["sensor-stuck"]);
    expect(recording.notices[0]!.text).toContain("reads 28 A");
    expect(recording.rowsUsed).toBe(800);
  });

  test("a motor at rest does not stick, nor do volts that rest with it", () => {
    expect(codes(record({ current: load(), packVoltage: volts(), shaftSpeed: revs() }))).toEqual([]);
  });

  test("no current while the shaft speeds up", () => {
    const current = load().map((amps, row) => (row < 400 ? 0.6 : amps));
    expect(codes(record({ current, shaftSpeed: revs() }))).toEqual(["sensor-stuck"]);
  });

  test("no current while the volts fall again and again, as under load", () => {
    const current = load().map((amps, row) => (row > 250 && row < 550 ? 0.6 : amps));
    const recording = record({ current, packVoltage: volts() });
    expect(codes(recording)).toEqual(["sensor-stuck"]);
    expect(recording.notices[0]!.text).toContain("reads 0.6 A for 59.6 s");
  });

  test("volts that only flicker at rest tell nothing", () => {
    const packVoltage = load().map((_, row) => 25 + (row % 2) * 0.05);
    expect(codes(record({ current: load(), packVoltage }))).toEqual([]);
  });

  test("another pack at rest falls once: that is no load", () => {
    const current = load().map((amps, row) => (row > 250 && row < 550 ? 0.6 : amps));
    const packVoltage = volts().map((volt, row) => (row > 250 && row < 550 ? (row < 400 ? 25 : 23.5) : volt));
    expect(codes(record({ current, packVoltage }))).toEqual([]);
  });
});

describe("the current sensor", () => {
  test.each([0.1, 0.5, 1])("in steps of %s A on 45 A is fine enough", (step) => {
    const current = load().map((amps) => Math.round(amps / step) * step);
    expect(codes(record({ current }))).toEqual([]);
  });

  test.each([2, 5])("in steps of %s A on 45 A is coarse, and said", (step) => {
    const current = load().map((amps) => Math.round(amps / step) * step);
    const recording = record({ current });
    expect(recording.notices).toMatchObject([{ code: "coarse-resolution", severity: "note" }]);
    expect(recording.notices[0]!.text).toContain("resolution");
    expect(recording.notices[0]!.text).toContain(`${step} A`);
    expect(smallestStep(recording.channels.get("current")!)).toBeCloseTo(step, 9);
  });

  test("that reads below zero at rest has an offset, and it is said", () => {
    const current = load().map((amps) => amps - 0.8);
    const recording = record({ current });
    expect(restCurrentA(recording.channels.get("current")!)).toBeCloseTo(-0.2, 9);
    expect(recording.notices).toMatchObject([{ code: "negative-rest-current", severity: "warning" }]);
    expect(recording.notices[0]!.text).toContain("negative");
  });

  test("that reads above zero at rest shows a load, not an offset", () => {
    const restA = restCurrentA(Float64Array.from(load()));
    expect(restA).toBe(0.6);
    expect(negativeOffsetA(restA)).toBe(0);
    expect(negativeOffsetA(-0.02)).toBe(0);
    expect(negativeOffsetA(-0.3)).toBe(-0.3);
    expect(negativeOffsetA(null)).toBe(0);
  });

  test("that never comes to rest tells nothing of its offset", () => {
    const busy = Float64Array.from({ length: 500 }, (_, row) => (row === 7 ? -1 : 40 + (row % 20)));
    expect(restCurrentA(busy.map((amps, row) => (row > 8 ? amps + 1 : amps)))).not.toBeLessThan(0);
    expect(restCurrentA(new Float64Array(0))).toBeNull();
  });
});
