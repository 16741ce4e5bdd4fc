import { describe, expect, it } from "vitest";
import {
  ALL_DEPARTURES,
  NAMED_AIRCRAFT,
  randomFlightSpec,
  simulateFlight,
  TERN,
  usualSpec,
} from "./index.ts";

describe("simulated flights", () => {
  it("are the same for the same spec and differ for another seed", () => {
    const first = simulateFlight(usualSpec(7, TERN));
    const again = simulateFlight(usualSpec(7, TERN));
    const other = simulateFlight(usualSpec(8, TERN));
    expect(again.logged.channels.get("current")).toEqual(first.logged.channels.get("current"));
    expect(again.truth).toEqual(first.truth);
    expect(other.logged.channels.get("current")).not.toEqual(first.logged.channels.get("current"));
  });

  it.each(NAMED_AIRCRAFT)("keep charge, energy and cell volts in step: $name", (aircraft) => {
    const { logged, truth } = simulateFlight(
      usualSpec(3, aircraft, { sensors: { rateHz: 50, voltNoise: 0, ampNoise: 0, voltStep: 0, ampStep: 0 } }),
    );
    const amps = logged.channels.get("current")!;
    const volts = logged.channels.get("packVoltage")!;
    let coulombs = 0;
    let joules = 0;
    for (let row = 1; row < logged.rows; row += 1) {
      const stepS = logged.timeS[row]! - logged.timeS[row - 1]!;
      coulombs += ((amps[row]! + amps[row - 1]!) / 2) * stepS;
      joules += ((amps[row]! * volts[row]! + amps[row - 1]! * volts[row - 1]!) / 2) * stepS;
    }
    const flight = truth.sorties[0]!;
    expect(coulombs / 3.6).toBeCloseTo(flight.chargeUsedMah, 3);
    expect(joules / 3600).toBeCloseTo(flight.energyUsedWh, 5);
    expect(flight.restCellV).toBeGreaterThan(4.15);
    expect(flight.minCellV).toBeGreaterThan(3.3);
    expect(flight.minCellV).toBeLessThan(3.9);
  });
});

describe("random flights", () => {
  it("have parts that suit each other (seeds 1 to 60)", () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { truth, spec } = simulateFlight(randomFlightSpec(seed, { departures: ALL_DEPARTURES }));
      const flight = truth.sorties[0]!;
      const label = `seed ${seed}`;
      expect(flight.complete, label).toBe(true);
      expect(flight.staticCurrentA!, label).toBeLessThan(spec.aircraft.controller.continuousA);
      expect(flight.motorEfficiencyPct!, label).toBeGreaterThan(85);
      expect(flight.motorEfficiencyPct!, label).toBeLessThan(96);
      expect(flight.chargeLeftPct, label).toBeGreaterThan(10);
      expect(flight.minCellV, label).toBeGreaterThan(3.2);
      expect(flight.controllerPeakC, label).toBeLessThan(120);
    }
  });
});
