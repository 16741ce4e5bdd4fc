import { describe, expect, it } from "vitest";
import { FLIGHT, logOf, logText, noticesOf, outcomeOf } from "./support.ts";

const speeds = (write: (rpm: number) => string) =>
  logText("time_s,pack_v,current_a,rpm", ({ s, volts, amps, rpm }) => [s, volts, amps, write(rpm)]);

describe("a shaft speed written with a mark between its thousands", () => {
  it("6.010 in every cell is read as 6010, and said", () => {
    const log = logOf(speeds((rpm) => (rpm / 1000).toFixed(3)));
    FLIGHT.forEach(({ rpm }, at) => void expect(log.channels.get("shaftSpeed")![at]).toBeCloseTo(rpm, 6));
    const notice = log.notices.find(({ code }) => code === "unit-from-values")!;
    expect(notice.options).toEqual(["--unit shaftSpeed=krpm"]);
    const forced = logOf(
      speeds((rpm) => (rpm / 1000).toFixed(3)),
      { units: new Map([["shaftSpeed", "rpm"]]) },
    );
    expect(Math.max(...forced.channels.get("shaftSpeed")!)).toBeLessThan(10);
  });

  it("whole revolutions, few or many, stay as they are", () => {
    for (const scale of [1, 1 / 200]) {
      const log = logOf(speeds((rpm) => String(Math.round(rpm * scale))));
      expect(noticesOf(outcomeOf(speeds(String))).map(({ code }) => code)).not.toContain("unit-from-values");
      expect(log.channels.get("shaftSpeed")![60]).toBe(Math.round(FLIGHT[60]!.rpm * scale));
    }
  });
});
