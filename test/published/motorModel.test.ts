import { describe, expect, it } from "vitest";
import { bestEfficiencyCurrentA, motorCurrentA, motorPoint } from "../../src/physics/index.ts";
import { expectDigits } from "./digits.ts";

describe("first-order motor", () => {
  // Constants: the 400-size 6 V motor that public source by M. Drela (MIT) takes as its default; results recomputed
  // from the equations of First-Order DC Electric Motor Model (2007).
  const motor = { kvRpmPerV: 2760, pathOhm: 0.31, noLoadA: 0.77 };

  it.each([
    [0.77, 15901.2, 0, 0, 0],
    [3, 13993.2, 0.007716, 11.3061, 0.6281],
    [5, 12282.0, 0.014635, 18.8235, 0.6275],
  ])("at 6 V and %f A", (amps, rpm, torque, power, efficiency) => {
    const point = motorPoint(6, amps, motor);
    expect(point.speedRevPerS * 60).toBeCloseTo(rpm, 1);
    expect(point.torqueNm).toBeCloseTo(torque, 6);
    expect(point.shaftPowerW).toBeCloseTo(power, 3);
    expect(point.efficiency).toBeCloseTo(efficiency, 4);
  });

  it("is most efficient at 3.860 A: 13257.0 rev/min, 14.8443 W, .6409", () => {
    const amps = bestEfficiencyCurrentA(6, motor);
    expect(amps).toBeCloseTo(3.86, 3);
    const point = motorPoint(6, amps, motor);
    expect(point.speedRevPerS * 60).toBeCloseTo(13257, 0);
    expect(point.shaftPowerW).toBeCloseTo(14.8443, 4);
    expect(point.efficiency).toBeCloseTo(0.6409, 4);
    expect(motorPoint(6, amps * 1.1, motor).efficiency).toBeLessThan(point.efficiency);
    expect(motorPoint(6, amps / 1.1, motor).efficiency).toBeLessThan(point.efficiency);
  });

  it("finds the motor current again behind a controller that passes power on", () => {
    const point = motorPoint(6, 5, motor);
    expectDigits(motorCurrentA(12, 2.5, point.speedRevPerS, 2760, 0.31), 5, 13);
  });
});

describe("a 48 V catalogue motor", () => {
  // Data sheet of a brushed 48 V motor (maker not named here): 77.8 rev/min per V, 0.365 ohm, no load 3670 rev/min
  // and 0.289 A, 3420 rev/min and 800 mNm at 6.8 A, stall 131 A and 16.1 Nm, best efficiency 88 %.
  const motor = { kvRpmPerV: 77.8, pathOhm: 0.365, noLoadA: 0.289 };

  it("agrees with its sheet within 4 per cent", () => {
    const near = (own: number, sheet: number) => expect(Math.abs(own / sheet - 1)).toBeLessThan(0.04);
    const stallA = 48 / motor.pathOhm;
    near(motorPoint(48, 0.289, motor).speedRevPerS * 60, 3670);
    near(motorPoint(48, 6.8, motor).speedRevPerS * 60, 3420);
    near(motorPoint(48, 6.8, motor).torqueNm, 0.8);
    near(stallA, 131);
    near(motorPoint(48, stallA, motor).torqueNm, 16.1);
    near(motorPoint(48, bestEfficiencyCurrentA(48, motor), motor).efficiency, 0.88);
    near((motorPoint(48, 6.8, motor).torqueNm * 2 * Math.PI * 3420) / 60 / (48 * 6.8), 0.878);
  });
});

describe("a small 12 V motor of a public example", () => {
  // U 12 V, R 25 ohm, I0 .02 A, k .014 Vs: no load 7844.07 rev/min, stall .48 A and 6.44 mNm, best efficiency .6334.
  const motor = { kvRpmPerV: 60 / (2 * Math.PI * 0.014), pathOhm: 25, noLoadA: 0.02 };

  it("gives the same", () => {
    expect(motorPoint(12, 0.02, motor).speedRevPerS * 60).toBeCloseTo(7844.07, 2);
    expect(motorPoint(12, 0.48, motor).torqueNm).toBeCloseTo(6.44e-3, 6);
    expect(motorPoint(12, bestEfficiencyCurrentA(12, motor), motor).efficiency).toBeCloseTo(0.6334, 4);
  });
});
