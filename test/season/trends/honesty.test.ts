import { describe, expect, it } from "vitest";
import { type TrendMeasure, trendsOf } from "../../../src/season/trends/index.ts";
import { SCENARIOS, simulatedSeason } from "./simulatedSeasons.ts";

/** Three seasons in all: the figures over many are those of scripts/bench-trend.ts. */
function verdicts(scenario: string, seed: number): Readonly<Partial<Record<TrendMeasure, string>>> {
  const found = SCENARIOS[scenario];
  if (found === undefined) throw new Error(`no scenario called ${scenario}`);
  const { series } = trendsOf(simulatedSeason(found, seed), "simulated");
  return Object.fromEntries(series.map(({ measure, verdict }) => [measure, verdict]));
}

describe("trends through simulated logs (seeds 8101 to 8103)", () => {
  it("find extra heat and an ageing pack, and leave the rest alone", () => {
    expect(verdicts("extra heat, motor current; pack ages", 8101)).toEqual({
      controllerRisePerA2: expect.stringMatching(/rising|shifted/),
      packResistanceMohm: expect.stringMatching(/rising|shifted/),
      chargeRateMahPerS: "no change shown",
      propellerPowerCoefficient: "no change shown",
    });
  }, 120_000);

  it("call nothing in a season of changing weather", () => {
    expect(new Set(Object.values(verdicts("nothing changes", 8102)))).toEqual(new Set(["no change shown"]));
  }, 120_000);

  it("do not judge lost cooling without speed, nor ageing where the weather could be it", () => {
    const found = verdicts("lost cooling, motor current, no speed; warming", 8103);
    expect(found.controllerTimeConstantS).toBe("not judged");
    expect(found.packResistanceMohm).toBe("not judged");
  }, 120_000);
});
