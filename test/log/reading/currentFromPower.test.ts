import { describe, expect, it } from "vitest";
import { codesOf, FLIGHT, logOf, logText, outcomeOf } from "./support.ts";

const watts = (name: string, factor = 1) =>
  logText(`time_s,pack_v,${name}`, ({ s, volts, amps }) => [s, volts, ((volts * amps) / factor).toFixed(4)]);

describe("a log of volts and watts without a current", () => {
  it.each([
    ["power_w", 1],
    ["Power [W]", 1],
    ["watts", 1],
    ["Leistung (kW)", 1000],
  ])("%s: the current is their quotient, and said", (name, factor) => {
    const log = logOf(watts(name, factor));
    const amps = log.channels.get("current")!;
    FLIGHT.forEach((row, at) => void expect(amps[at]!).toBeCloseTo(row.amps, 1));
    const notice = log.notices.find(({ code }) => code === "current-derived")!;
    expect(notice.severity).toBe("warning");
    expect(notice.text).toContain(name);
    expect(codesOf(outcomeOf(watts(name, factor)))).not.toContain("channel-not-found");
  });

  it.each([
    "energy_wh",
    "Power",
    "Output Power",
    "Power (mW)",
    "shaft power [W]",
    "max power W",
    "rx power dbm",
  ])("not from %s", (name) => {
    expect(logOf(watts(name)).channels.has("current")).toBe(false);
  });

  it("not where two columns could be meant, and never in the place of a logged current", () => {
    const two = logText("time_s,pack_v,power_w,power2_w", ({ s, volts }) => [s, volts, 900, 900 + s]);
    expect(logOf(two).channels.has("current")).toBe(false);
    const logged = logText("time_s,pack_v,power_w,current_a", ({ s, volts, amps }) => [s, volts, 900, amps]);
    expect(logOf(logged).channels.get("current")![100]).toBe(FLIGHT[100]!.amps);
  });
});
