import { describe, expect, it } from "vitest";
import { NO_BUDGET } from "../../../src/aircraft/budget.ts";
import { known, unknown } from "../../../src/base/quantity/index.ts";
import type { AnalysedFlight, FlightPictures } from "../../../src/flight/analysis/index.ts";
import { partMeanings, type WhyOff, whyOffSteps } from "../../../src/flight/judgement/index.ts";
import { AGREES } from "../../../src/flight/judgement/partSentences.ts";
import { SAMPLE_BUDGET, SAMPLE_FACTS, sampleInput } from "../../support/sampleCheck.ts";

const flight = sampleInput().checked.analysed[0]!;
const withPictures = (change: Partial<FlightPictures>): AnalysedFlight => ({
  ...flight,
  pictures: { ...flight.pictures, ...change },
});
const meaningOf = (one: AnalysedFlight) => partMeanings(one, SAMPLE_FACTS, SAMPLE_BUDGET);

describe("what the parts mean", () => {
  it("holds the pack against the planned current, else against the peak", () => {
    expect(meaningOf(flight).pack[0]).toMatch(
      /^Ten seconds into the planned static current of 55 A .* 2\.48 ±/,
    );
    const unplanned = partMeanings(flight, SAMPLE_FACTS, NO_BUDGET).pack;
    expect(unplanned[0]).toMatch(/^Ten seconds into the peak of 78\.4 A/);
    expect(unplanned[1]).toMatch(/stands at 3\.410 ± 0\.030 V; the limit is 3\.30 V\.$/);
  });

  it("never lets a day on which the limit is not reached pass without where the controller settles", () => {
    const [today, hotDay] = meaningOf(flight).heat;
    expect(today).toBe("Today full throttle settles at 78.0 ± 6.0 °C, below the limit of 85 °C.");
    expect(hotDay).toMatch(
      /^At 35 °C full throttle held from cold brings the controller to 85 °C after 164 ± 22 s\.$/,
    );
    const { heat } = flight.pictures;
    const near = { ...heat.today, settlesC: known(83, 6, "degC", "predicted") };
    expect(meaningOf(withPictures({ heat: { ...heat, today: near } })).heat[0]).toContain("within reach of");
    const none = { settlesC: unknown("degC", "no fit"), untilLimitS: unknown("s", "no fit") };
    expect(meaningOf(withPictures({ heat: { ...heat, today: none, onHotDay: none } })).heat).toEqual([]);
  });

  it("finds the static run inside or beyond where the lines meet, and claims less where less was tested", () => {
    const { load } = flight.pictures;
    const lines = load.lines!;
    const near = { ...lines, staticRpm: known(6600, 20, "rev/min", "measured") };
    const said = (change: Partial<FlightPictures["load"]>) =>
      meaningOf(withPictures({ load: { ...load, ...change } })).load[1];
    expect(said({})).toBe(AGREES.not);
    expect(said({ lines: near })).toBe(AGREES.measuredLine);
    const published = known(0.041, 0.01, "1", "predicted");
    expect(said({ lines: { ...near, coefficient: published } })).toBe(AGREES.publishedLine);
    expect(said({ lines: near, isCurrentEstimated: true })).toBe(AGREES.estimatedCurrent);
  });
});

describe("the steps from the planned to the measured value", () => {
  const why: WhyOff = {
    line: "staticCurrentA",
    planned: 55,
    measured: known(46, 1.8, "A", "measured"),
    baseline: known(49, 10, "A", "predicted"),
    planItself: known(6, 10, "A", "predicted"),
    parts: [
      { fact: "propellerPowerCoefficient", change: known(-3, 2, "A", "derived") },
      { fact: "airDensity", change: unknown("A", "not in this log") },
    ],
    rest: known(0, 11, "A", "derived"),
    text: "",
  };

  it("begin at the plan, follow each other and end at what was measured", () => {
    const steps = whyOffSteps(why);
    expect(steps.map(({ what }) => what)).toEqual(["planItself", "propellerPowerCoefficient", "rest"]);
    expect(steps[0]).toMatchObject({ from: 55, to: 49, toLow: 39, toHigh: 59 });
    expect(steps[1]).toMatchObject({ from: 49, to: 46, toLow: 44, toHigh: 48 });
    expect(steps.at(-1)?.to).toBe(46);
  });

  it("are none where the line cannot be explained", () => {
    expect(whyOffSteps({ ...why, planItself: unknown("A", "why not") })).toEqual([]);
  });
});
