import { describe, expect, it } from "vitest";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { NO_MOTOR_CONSTANTS } from "../../../src/flight/analysis/identifiedSentences.ts";
import { identifyMotorLoad } from "../../../src/flight/analysis/motorLoad.ts";
import { estimateCurrent } from "../../../src/flight/analysis/propellerLoadCurrent.ts";
import type { Recording } from "../../../src/log/recording/index.ts";

// Drela, First-Order DC Electric Motor Model, MIT 2007: Im^2 R + Im w/kv = V I, P = (Im - I0) w/kv. The steady
// points below are worked from it by hand for kv 230 rev/min per volt, 0.02 ohm, no load 1 A at 10 V, 32 V.
const KV = 230;
const OHM = 0.02;
const PACK_V = 32;
const MOTOR_A = 60;
const BACK_V = PACK_V - MOTOR_A * OHM;
const NO_LOAD_A = Math.sqrt(3.2);
const SHAFT_W = (MOTOR_A - NO_LOAD_A) * BACK_V;
const RPM = KV * BACK_V;
const DIAMETER_IN = 18;
/** ISO 2533 at sea level and 15 degC. */
const DENSITY = 1.225;
const COEFFICIENT = SHAFT_W / (DENSITY * (RPM / 60) ** 3 * (DIAMETER_IN * 0.0254) ** 5);

function facts(more: Partial<Facts["motor"]> = {}): Facts {
  return {
    ...NO_FACTS,
    motor: { ...NO_FACTS.motor, kv: KV, windingOhm: OHM, noLoadA: 1, polePairs: 7, ...more },
    propeller: { ...NO_FACTS.propeller, diameterIn: DIAMETER_IN, pitchIn: 10, family: "thin electric" },
  };
}

function steady(amps: number, rpm = RPM, rows = 40): Recording {
  const filled = (value: number) => new Float64Array(rows).fill(value);
  const channels = new Map<ChannelName, Float64Array>([
    ["packVoltage", filled(PACK_V)],
    ["current", filled(amps)],
    ["shaftSpeed", filled(rpm)],
    ["throttle", filled(100)],
  ]);
  return {
    rows,
    dataLines: rows,
    rowsUsed: rows,
    durationS: (rows - 1) / 10,
    timeS: Float64Array.from({ length: rows }, (_, row) => row / 10),
    channels,
    lineOfRow: (row) => row + 2,
    clockTextOfRow: () => null,
    stepS: 0.1,
    holes: [],
    repairs: [],
    dead: [],
    notices: [],
  };
}

const DAY = { ambientC: 15, startPct: null };
const ALL = { firstRow: 0, lastRow: 39 };

describe("identifyMotorLoad", () => {
  it("finds current, duty, shaft power, efficiency and coefficient of a full-throttle point", () => {
    const load = identifyMotorLoad(steady(MOTOR_A), ALL, facts(), DAY, ALL, null, null);
    expect(load.series!.motorCurrentA[5]).toBeCloseTo(MOTOR_A, 9);
    expect(load.staticDuty).toBeCloseTo(1, 9);
    expect(load.series!.shaftPowerW[5]).toBeCloseTo(SHAFT_W, 6);
    expect(load.motorEfficiencyPct.value).toBeCloseTo((100 * SHAFT_W) / (PACK_V * MOTOR_A), 6);
    expect(load.propellerPowerCoefficient.value! / COEFFICIENT).toBeCloseTo(1, 4);
  });

  it("lets two motors share the current", () => {
    const load = identifyMotorLoad(steady(2 * MOTOR_A), ALL, facts({ count: 2 }), DAY, ALL, null, null);
    expect(load.propellerPowerCoefficient.value! / COEFFICIENT).toBeCloseTo(1, 4);
  });

  it("offers the kv that full throttle shows, and keeps the coefficient", () => {
    const load = identifyMotorLoad(steady(MOTOR_A), ALL, facts({ kv: KV / 1.06 }), DAY, ALL, null, null);
    expect(load.wrongSetting).toBeNull();
    expect(load.offeredKv!.value).toBeCloseTo(KV, 6);
    expect(load.propellerPowerCoefficient.value! / COEFFICIENT).toBeCloseTo(1, 1);
  });

  it("computes nothing from a speed that cannot be", () => {
    const load = identifyMotorLoad(steady(MOTOR_A, 7 * RPM), ALL, facts(), DAY, ALL, null, null);
    expect(load.propellerPowerCoefficient.value).toBeNull();
    expect(load.motorEfficiencyPct.value).toBeNull();
    expect(load.wrongSetting!.candidates.map((cause) => cause.factor)).toContain(7);
  });

  it("says which facts are missing", () => {
    const load = identifyMotorLoad(steady(MOTOR_A), ALL, NO_FACTS, DAY, ALL, null, null);
    expect(load.propellerPowerCoefficient).toEqual({ value: null, unit: "1", why: NO_MOTOR_CONSTANTS });
  });
});

describe("estimateCurrent", () => {
  it("gives back the current of the same point from speed, volts and coefficient, marked estimated", () => {
    const known = { value: COEFFICIENT, halfWidth: 0.05 * COEFFICIENT };
    const { estimate } = estimateCurrent(steady(0), ALL, facts(), DAY, known);
    expect(estimate!.basis).toBe("estimated");
    expect(estimate!.currentA[5]! / MOTOR_A).toBeCloseTo(1, 4);
    expect(estimate!.relativeHalfWidth).toBeGreaterThan(0.05);
  });
});
