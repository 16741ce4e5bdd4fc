import { describe, expect, it } from "vitest";
import { flown, type LoggedFlight, logFlight, type SensorSpec, TERN, usualSpec } from "./index.ts";
import { airDensity } from "./powertrain.ts";

const SPEC = usualSpec(11, TERN, {
  script: { flightS: 90, lowPass: false },
  sensors: {
    rateHz: 10,
    voltNoise: 0,
    ampNoise: 0,
    rpmNoise: 0,
    voltStep: 0,
    ampStep: 0,
    temperatureStepC: 0,
  },
});
const FLIGHT = flown(SPEC);

function logged(sensors: Partial<SensorSpec> = {}): LoggedFlight {
  return logFlight({ ...SPEC, sensors: { ...SPEC.sensors, ...sensors } }, FLIGHT).logged;
}

const clean = logged();
const channel = (
  log: LoggedFlight,
  name: "packVoltage" | "current" | "shaftSpeed" | "controllerTemperature",
) => log.channels.get(name)!;

describe("sensors, one departure at a time", () => {
  it("apply gains and an offset", () => {
    const off = logged({ voltGain: 1.01, ampGain: 0.98, ampOffset: -0.4 });
    expect(channel(off, "packVoltage")[300]!).toBeCloseTo(1.01 * channel(clean, "packVoltage")[300]!, 6);
    expect(channel(off, "current")[300]!).toBeCloseTo(0.98 * channel(clean, "current")[300]! - 0.4, 6);
    expect(channel(off, "shaftSpeed")).toEqual(channel(clean, "shaftSpeed"));
  });

  it("delay one channel against another", () => {
    const late = logged({ ampDelayS: 0.1 });
    expect(channel(late, "current")[401]!).toBeCloseTo(channel(clean, "current")[400]!, 6);
    expect(channel(late, "packVoltage")).toEqual(channel(clean, "packVoltage"));
  });

  it("smooth the current without changing its sum by more than 0.1 %", () => {
    const slow = logged({ ampFilterS: 0.3 });
    const sum = (log: LoggedFlight) => channel(log, "current").reduce((total, amps) => total + amps, 0);
    const steepest = (log: LoggedFlight) =>
      channel(log, "current").reduce(
        (most, amps, row, all) => Math.max(most, amps - (all[row - 1] ?? amps)),
        0,
      );
    expect(sum(slow) / sum(clean)).toBeCloseTo(1, 3);
    expect(steepest(slow)).toBeLessThan(0.8 * steepest(clean));
  });

  it("let a probe lag and a temperature hold", () => {
    const lagged = logged({ probeLagS: 4 });
    const peak = (log: LoggedFlight) => Math.max(...channel(log, "controllerTemperature"));
    expect(peak(lagged)).toBeLessThan(peak(clean));
    const held = channel(logged({ temperatureHoldS: 1 }), "controllerTemperature");
    expect(new Set(held).size).toBeLessThan(0.12 * held.length);
  });

  it("multiply the shaft speed by a wrong setting", () => {
    const doubled = channel(logged({ speedFactor: 2 }), "shaftSpeed");
    expect(Math.abs(doubled[250]! - 2 * channel(clean, "shaftSpeed")[250]!)).toBeLessThanOrEqual(10);
  });

  it("lose rows or blank them", () => {
    const rows = logged({ dropOuts: [{ startS: 40.05, lengthS: 3, kind: "rows" }] });
    expect(rows.rows).toBe(clean.rows - 30);
    const blank = logged({ dropOuts: [{ startS: 40.05, lengthS: 3, kind: "blank" }] });
    expect(blank.rows).toBe(clean.rows);
    expect(channel(blank, "current").filter(Number.isNaN)).toHaveLength(30);
    expect(blank.channels.get("throttle")!.filter(Number.isNaN)).toHaveLength(0);
  });

  it("round to their steps", () => {
    const coarse = channel(logged({ voltStep: 0.1 }), "packVoltage");
    for (const volts of coarse) expect(Math.abs(10 * volts - Math.round(10 * volts))).toBeLessThan(1e-9);
  });
});

describe("the power system", () => {
  it("balances at every step: electric power is copper loss, no-load loss and shaft power", () => {
    const { fine } = FLIGHT;
    const { motor, controller } = TERN;
    for (let step = 1000; step < fine.steps; step += 97) {
      const motorA = fine.motorA[step]!;
      if (fine.duty[step]! < 0.1) continue;
      const electricW = fine.packV[step]! * (fine.packA[step]! - controller.standbyA);
      const copperW = motorA ** 2 * (motor.windingOhm + controller.resistanceOhm);
      const backV = fine.rpm[step]! / motor.kv;
      const noLoadW = motor.noLoadA * Math.sqrt(backV / 10) * backV;
      expect((copperW + noLoadW + fine.shaftW[step]!) / electricW).toBeCloseTo(1, 5);
    }
  });

  it("turns the propeller at the power its coefficient asks for, standing still", () => {
    const { fine } = FLIGHT;
    const step = fine.duty.findIndex((duty) => duty > 0.9999) + 100;
    const revPerS = fine.rpm[step]! / 60;
    const diameterM = TERN.propeller.diameterIn * 0.0254;
    const asked = TERN.propeller.staticCp * airDensity(SPEC.day) * revPerS ** 3 * diameterM ** 5;
    expect(fine.speedMS[step]).toBe(0);
    expect(fine.shaftW[step]! / asked).toBeCloseTo(1, 5);
  });
});
