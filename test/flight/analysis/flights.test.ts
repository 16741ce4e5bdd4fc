import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { type AnalysedFlight, analyseRecording, MEASURE_NAMES } from "../../../src/flight/analysis/index.ts";
import { BENCH_RUN, NO_RUNNING_CHANNEL, NOTHING_RUNS } from "../../../src/flight/analysis/sentences.ts";
import type { Recording } from "../../../src/log/recording/index.ts";
import {
  FLIGHT,
  OPEN_V,
  REST,
  type Stretch,
  syntheticRecording,
  TAXI,
} from "../../support/syntheticRecording.ts";

const DAY = { ambientC: null, startPct: null };
const analysed = (recording: Recording) => analyseRecording(recording, NO_FACTS, DAY);
const pause = (lengthS: number, more: Partial<Stretch> = {}): Stretch => ({ ...REST, lengthS, ...more });
const codes = (flight: AnalysedFlight) => flight.notices.map((notice) => notice.code);

describe("splitting a log into flights", () => {
  test("a pause of up to a minute does not end a flight", () => {
    const flights = analysed(syntheticRecording([REST, FLIGHT, pause(50), FLIGHT, REST]));
    expect(flights).toHaveLength(1);
    expect(codes(flights[0]!)).toEqual([]);
    expect(flights[0]!.measures.motorRunTimeS.value).toBeCloseTo(240, 0);
  });

  test("from power alone a longer pause with rested volts is one flight, and said", () => {
    const flights = analysed(syntheticRecording([REST, FLIGHT, pause(90), FLIGHT, REST]));
    expect(flights).toHaveLength(1);
    expect(codes(flights[0]!)).toEqual(["pause-bridged"]);
  });

  test("more than a quarter of an hour ends it in any case", () => {
    expect(analysed(syntheticRecording([REST, FLIGHT, pause(960), FLIGHT, REST], undefined, 2))).toHaveLength(
      2,
    );
  });

  test("volts that jumped up are another pack", () => {
    const used = { openV: OPEN_V - 2 };
    const stretches = [REST, { ...FLIGHT, ...used }, pause(40, used), pause(40), FLIGHT, REST];
    expect(analysed(syntheticRecording(stretches))).toHaveLength(2);
    const unchanged = [
      REST,
      { ...FLIGHT, ...used },
      pause(80, used),
      { ...FLIGHT, ...used },
      pause(15, used),
    ];
    expect(analysed(syntheticRecording(unchanged))).toHaveLength(1);
  });

  test("altitude decides a longer pause: airborne is one flight, on the ground two", () => {
    const channels = ["packVoltage", "current", "altitude"] as const;
    const glide = pause(90, { altitudeM: 40 });
    expect(analysed(syntheticRecording([REST, FLIGHT, glide, FLIGHT, REST], channels))).toHaveLength(1);
    expect(analysed(syntheticRecording([REST, FLIGHT, pause(90), FLIGHT, REST], channels))).toHaveLength(2);
  });

  test("a hole over a minute ends the flight on both sides, a shorter one does not", () => {
    const withHole = (holeBeforeS: number) => [REST, FLIGHT, { ...FLIGHT, holeBeforeS }, REST];
    const cut = analysed(syntheticRecording(withHole(70)));
    expect(cut.map((flight) => flight.complete)).toEqual([false, false]);
    expect(cut.map(codes)).toEqual([["ends-under-power"], ["starts-under-power"]]);
    expect(analysed(syntheticRecording(withHole(30))).map((flight) => flight.complete)).toEqual([true]);
  });

  test("a jump of unknown length ends the flight however short it seems", () => {
    const jumped = syntheticRecording([REST, FLIGHT, FLIGHT, REST], undefined, 5, { jumpsAtS: [135] });
    expect(analysed(jumped).map((flight) => flight.complete)).toEqual([false, false]);
  });

  test("a hole while the motor had long stopped cuts no flight", () => {
    const stretches = [REST, FLIGHT, REST, { ...REST, holeBeforeS: 200 }, FLIGHT, REST];
    expect(analysed(syntheticRecording(stretches)).map((flight) => flight.complete)).toEqual([true, true]);
  });

  test("every row belongs to exactly one flight, and phases fill each window end to end", () => {
    const used = { openV: OPEN_V - 2 };
    const stretches = [
      REST,
      TAXI,
      FLIGHT,
      TAXI,
      pause(70, used),
      pause(70),
      FLIGHT,
      { ...FLIGHT, holeBeforeS: 99 },
    ];
    const recording = syntheticRecording(stretches);
    const flights = analysed(recording);
    expect(flights).toHaveLength(3);
    expect(flights[0]!.firstRow).toBe(0);
    expect(flights.at(-1)!.lastRow).toBe(recording.rows - 1);
    for (const [index, flight] of flights.entries()) {
      if (index > 0) expect(flight.firstRow).toBe(flights[index - 1]!.lastRow + 1);
      expect(flight.phases[0]!.startS).toBe(flight.windowStartS);
      expect(flight.phases.at(-1)!.endS).toBe(flight.windowEndS);
      for (const [at, phase] of flight.phases.entries()) {
        expect(phase.endS).toBeGreaterThan(phase.startS);
        if (at > 0) expect(phase.startS).toBe(flight.phases[at - 1]!.endS);
      }
    }
  });
});

describe("motor running", () => {
  const runs = (recording: Recording) => {
    const [flight] = analysed(recording);
    return [flight!.startS, flight!.endS];
  };
  const stretches = [REST, TAXI, FLIGHT, TAXI, REST];

  test("is told by current or shaft speed alone, with the same bounds", () => {
    for (const channel of ["current", "shaftSpeed"] as const) {
      const [startS, endS] = runs(syntheticRecording(stretches, ["packVoltage", channel]));
      expect(startS).toBeCloseTo(15, 0);
      expect(endS).toBeCloseTo(155, 0);
    }
  });

  test("a propeller that windmills in a glide does not run", () => {
    const glide: Stretch = { ...REST, lengthS: 40, rpm: 4500, altitudeM: 40 };
    const recording = syntheticRecording(
      [REST, FLIGHT, glide, FLIGHT, REST],
      ["packVoltage", "current", "shaftSpeed"],
    );
    expect(analysed(recording)[0]!.measures.motorRunTimeS.value).toBeCloseTo(240, 0);
  });

  test("a controller's standby current is idle, not load", () => {
    const standby = { ...REST, amps: 1.1 };
    const [startS, endS] = runs(syntheticRecording([standby, FLIGHT, standby]));
    expect([Math.round(startS!), Math.round(endS!)]).toEqual([15, 135]);
  });

  test("a log without idle starts and ends under power, and its times are lower bounds", () => {
    const [flight] = analysed(syntheticRecording([FLIGHT]));
    expect(flight!.complete).toBe(false);
    expect(codes(flight!)).toEqual(["starts-under-power", "ends-under-power"]);
    expect(flight!.notices[0]!.text).toContain("starts");
    expect(flight!.measures.flightTimeS).toMatchObject({ bound: "atLeast", high: null });
    expect(flight!.measures.restPackV.value).toBeNull();
  });
});

describe("logs without a flight", () => {
  test("nothing runs: a bench run whose flight measures are null, every one present", () => {
    const [flight] = analysed(syntheticRecording([{ ...REST, lengthS: 60 }]));
    expect(flight!.kind).toBe("benchRun");
    expect(flight!.measures.flightTimeS).toMatchObject({ value: null, why: NOTHING_RUNS });
    for (const name of MEASURE_NAMES) expect(flight!.measures[name], name).toBeDefined();
  });

  test("bursts on the ground are a bench run", () => {
    const burst: Stretch = { lengthS: 8, amps: 50 };
    const [flight] = analysed(syntheticRecording([REST, burst, pause(8), burst, pause(8), burst, REST]));
    expect(flight!.kind).toBe("benchRun");
    expect(flight!.measures.flightTimeS).toMatchObject({ value: null, why: BENCH_RUN });
    expect(flight!.measures.meanCurrentA.value).toBeCloseTo(50, 0);
  });

  test("flight power at an altitude that stays on the ground is a bench run", () => {
    const grounded = { ...FLIGHT, altitudeM: 0.3 };
    const recording = syntheticRecording([REST, grounded, REST], ["packVoltage", "current", "altitude"]);
    expect(analysed(recording)[0]!.kind).toBe("benchRun");
  });

  test("neither current nor shaft speed: nothing is made up", () => {
    const [flight] = analysed(syntheticRecording([REST, FLIGHT, REST], ["packVoltage"]));
    expect(flight!.measures.flightTimeS).toMatchObject({ value: null, why: NO_RUNNING_CHANNEL });
    expect(flight!.measures.chargeUsedMah.value).toBeNull();
  });
});

describe("what is said about power at the edges and about pauses", () => {
  test("several bridged pauses are one notice that counts them", () => {
    const stretches = [REST, FLIGHT, pause(90), FLIGHT, pause(100), FLIGHT, pause(80), FLIGHT, REST];
    const [flight] = analysed(syntheticRecording(stretches));
    expect(codes(flight!)).toEqual(["pause-bridged"]);
    expect(flight!.notices[0]!.count).toBe(3);
    expect(flight!.notices[0]!.text).toContain("for 1:40 between lines");
  });

  test("a flight after a hole that is seen at rest first does not start under power", () => {
    const stretches = [REST, FLIGHT, REST, { ...REST, lengthS: 4, holeBeforeS: 200 }, FLIGHT, REST];
    expect(analysed(syntheticRecording(stretches)).map(({ complete }) => complete)).toEqual([true, true]);
    const running = [REST, FLIGHT, REST, { ...FLIGHT, holeBeforeS: 200 }, REST];
    expect(analysed(syntheticRecording(running)).map(codes)).toEqual([[], ["starts-under-power"]]);
  });

  test("a log of one row in ten seconds that rests for a row starts and ends at rest", () => {
    const short = { ...REST, lengthS: 10, amps: 0 };
    const [flight] = analysed(
      syntheticRecording([short, { ...FLIGHT, lengthS: 300 }, short], undefined, 0.1),
    );
    expect([codes(flight!), flight!.complete]).toEqual([[], true]);
  });
});
