import { describe, expect, it } from "vitest";
import { NO_BUDGET } from "../../../src/aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../../src/aircraft/facts.ts";
import { between, known, unknown } from "../../../src/base/quantity/index.ts";
import { headline, judgeFlight } from "../../../src/flight/judgement/index.ts";
import { measuresOf } from "../../support/measuresOf.ts";

const FACTS: Facts = {
  ...NO_FACTS,
  name: "Example",
  pack: { ...NO_FACTS.pack, cells: 8, minLoadedCellV: 3.3, maxContinuousA: 150 },
  controller: { ...NO_FACTS.controller, continuousA: 100, burstA: 120, burstS: 10, limitC: 100 },
};
const BUDGET = { ...NO_BUDGET, planned: { ...NO_BUDGET.planned, staticCurrentA: 55, flightTimeS: 360 } };
const GOOD = {
  staticCurrentA: known(56, 1, "A", "measured"),
  flightTimeS: between(372, 366, 378, "s", "derived"),
  chargeUsedMah: known(2310, 50, "mAh", "measured"),
  peakCurrentA: known(70, 2, "A", "measured"),
  longestOverRatingS: known(0, 0, "s", "derived"),
  controllerPeakC: known(60, 2, "degC", "measured"),
  minCellV: known(3.55, 0.03, "V", "derived"),
} as const;

const WITH_CAPACITY: Facts = { ...FACTS, pack: { ...FACTS.pack, capacityMah: 5000 } };

function judged(changes: Parameters<typeof measuresOf>[0], facts = FACTS) {
  const measures = measuresOf({ ...GOOD, ...changes });
  const judgements = judgeFlight(measures, "flight", facts, BUDGET);
  return { judgements, sentence: headline(measures, "flight", true, judgements) };
}

describe("judging a flight", () => {
  it("holds each given plan line and limit and lists a known measure without a limit as not judged", () => {
    const { judgements } = judged({ peakPowerW: known(1900, 40, "W", "derived") });
    const short = judgements.map((one) => `${one.line} ${one.against} ${one.source} ${one.verdict}`);
    expect(short).toEqual([
      "staticCurrentA plan planned.staticCurrentA within",
      "flightTimeS plan planned.flightTimeS within",
      "peakCurrentA limit controller.burstA within",
      "longestOverRatingS limit controller.burstS within",
      "peakCurrentA limit pack.maxContinuousA within",
      "peakPowerW limit motor.maxPowerW not judged",
      "controllerPeakC limit controller.limitC within",
      "controllerHotDayPeakC limit controller.limitC not judged",
      "minCellV limit pack.minLoadedCellV within",
    ]);
  });

  it("counts the other limits that were passed beside the worst", () => {
    const hot = { controllerPeakC: known(108, 3, "degC", "measured") } as const;
    const low = { minCellV: known(3.1, 0.02, "V", "derived") } as const;
    expect(judged(hot).sentence).not.toContain("more limit");
    expect(judged({ ...hot, ...low }).sentence).toContain("100 °C (and 1 more limit);");
  });

  it("says where the plan was made for another propeller than the one flown", () => {
    const plannedFor = { diameterIn: 18, pitchIn: 10, blades: 2 };
    const flownWith = (pitchIn: number, blades: number) => {
      const facts = { ...FACTS, propeller: { ...FACTS.propeller, diameterIn: 18, pitchIn, blades } };
      const measures = measuresOf(GOOD);
      return judgeFlight(measures, "flight", facts, { ...BUDGET, plannedFor })[0]!.text;
    };
    expect(flownWith(8, 2)).toContain("the plan of 55 A (made for the 18x10, not the 18x8)");
    expect(flownWith(10, 3)).toContain("(made for the 18x10 with 2 blades, not the 18x10 with 3 blades)");
    expect(flownWith(10, 2)).not.toContain("made for");
  });

  it("judges nothing without an aircraft and says so", () => {
    const measures = measuresOf(GOOD);
    const judgements = judgeFlight(measures, "flight", NO_FACTS, BUDGET);
    expect(judgements).toEqual([]);
    expect(headline(measures, "flight", true, judgements)).toBe(
      "Flew 6:12 and used 2310 ± 50 mAh; no aircraft file was given, so nothing was judged.",
    );
  });

  it("lets nothing pass in a log in which the motor never runs, but tells a limit that is passed", () => {
    const idle = { ...GOOD, motorRunTimeS: unknown("s", "the motor never runs in this log") };
    const ofIdle = (changes: Parameters<typeof measuresOf>[0]) => {
      const measures = measuresOf({ ...idle, ...changes });
      const judgements = judgeFlight(measures, "benchRun", FACTS, BUDGET);
      return { judgements, sentence: headline(measures, "benchRun", true, judgements) };
    };
    const { judgements, sentence } = ofIdle({});
    expect(judgements.length).toBeGreaterThan(0);
    expect(new Set(judgements.map(({ verdict }) => verdict))).toEqual(new Set(["not judged"]));
    expect(sentence).toBe("The motor never runs in this log, so nothing was judged.");
    const hot = ofIdle({ controllerPeakC: known(108, 3, "degC", "measured") });
    expect(hot.sentence).toContain("Limit passed: controller peak 108");
  });

  it("calls a log that shows no run of the motor what it is, not a bench run", () => {
    const why = "neither current nor shaft speed is logged, so motor running cannot be told";
    const measures = measuresOf({ motorRunTimeS: unknown("s", why) });
    expect(headline(measures, "benchRun", true, [])).toMatch(/^Neither current nor shaft speed is logged/);
    const ran = measuresOf({ motorRunTimeS: known(30, 1, "s", "measured") });
    expect(headline(ran, "benchRun", true, [])).toMatch(/^Bench run/);
  });

  it("leaves lines that need a flight out of a bench run", () => {
    const judgements = judgeFlight(measuresOf(GOOD), "benchRun", FACTS, BUDGET);
    expect(judgements.map((one) => one.line)).not.toContain("flightTimeS");
  });

  it("puts a passed limit first in the sentence, with what to do", () => {
    const { sentence } = judged({ controllerPeakC: known(108, 3, "degC", "measured") });
    expect(sentence).toBe(
      "Limit passed: controller peak 108.0 ± 3.0 °C is above the controller's limit, 100 °C; let the controller cool and improve its airflow before the next flight.",
    );
  });

  it("names the missed plan line furthest off", () => {
    const { sentence } = judged({ staticCurrentA: known(66, 1, "A", "measured") });
    expect(sentence).toContain("the plan did not hold: static current 66.0 ± 1.0 A is more than 10 % off");
  });

  it("names the limit that is near", () => {
    const { sentence } = judged({ minCellV: known(3.34, 0.03, "V", "derived") });
    expect(sentence).toContain(
      "no judged limit was passed, but lowest cell voltage 3.340 ± 0.030 V is close to",
    );
  });

  it("does not call a limit unpassed that the interval crosses", () => {
    const { sentence } = judged({ minCellV: known(3.32, 0.03, "V", "derived") });
    expect(sentence).toContain(
      "no judged limit was clearly passed, but lowest cell voltage 3.320 ± 0.030 V may be below",
    );
    const stretch = judged({ longestOverRatingS: between(0, 0, 24, "s", "derived") });
    expect(stretch.sentence).toContain("0 s (0 to 24 s) may be above");
  });

  it("tells a limit that may have been passed before one that is only near", () => {
    const { sentence } = judged({
      peakCurrentA: known(119, 0.5, "A", "measured"),
      controllerPeakC: known(97, 6, "degC", "measured"),
    });
    expect(sentence).toContain(
      "no judged limit was clearly passed, but controller peak 97.0 ± 6.0 °C may be above",
    );
  });

  it("does not count a plan line as held that its interval leaves open", () => {
    const { sentence, judgements } = judged({ staticCurrentA: known(60, 2, "A", "measured") });
    expect(judgements[0]).toMatchObject({ verdict: "close" });
    expect(judgements[0]?.text).toBe(
      "Static current 60.0 ± 2.0 A may be more than 10 % off the plan of 55 A.",
    );
    expect(sentence).toContain(
      "plan and limits held in 6 of 7 lines; static current is too near the plan to tell; 1 could not be judged",
    );
  });

  it("judges the charge left by the reserve and says to land earlier", () => {
    const { judgements, sentence } = judged({ chargeLeftPct: known(12, 2, "%", "derived") }, WITH_CAPACITY);
    expect(judgements.find(({ source }) => source === "reservePct")).toMatchObject({
      line: "chargeLeftPct",
      against: "plan",
      sense: "atLeast",
      value: 25,
      verdict: "outside",
    });
    expect(sentence).toBe(
      "Flew 6:12 and used 2310 ± 50 mAh; the reserve was used: charge left 12.0 ± 2.0 % is below the reserve, 25 %; land earlier, with a shorter timer.",
    );
  });

  it("lets the reserve lead a plan line that is further off, but not a limit", () => {
    const changes = {
      chargeLeftPct: known(19, 0.5, "%", "derived"),
      staticCurrentA: known(90, 1, "A", "measured"),
    };
    expect(judged(changes, WITH_CAPACITY).sentence).toContain("the reserve was used");
    const hot = { ...changes, controllerPeakC: known(108, 3, "degC", "measured") };
    expect(judged(hot, WITH_CAPACITY).sentence).toMatch(/^Limit passed/);
  });

  it("questions a pack that gave more than it holds", () => {
    const { sentence } = judged({ chargeLeftPct: known(-7, 2, "%", "derived") }, WITH_CAPACITY);
    expect(sentence).toContain(
      "charge left -7.0 ± 2.0 % is below the reserve, 25 %, and less than nothing: check pack.capacityMah, --start-pct and sensors.currentScale",
    );
  });

  it("does not judge the reserve of a pack of unknown capacity, nor on the bench", () => {
    const left = { chargeLeftPct: known(12, 2, "%", "derived") };
    expect(judged(left).judgements.map(({ line }) => line)).not.toContain("chargeLeftPct");
    const bench = judgeFlight(measuresOf({ ...GOOD, ...left }), "benchRun", WITH_CAPACITY, BUDGET);
    expect(bench.map(({ line }) => line)).not.toContain("chargeLeftPct");
  });

  it("says what to do about a missed plan, by the side it was missed on", () => {
    expect(judged({ staticCurrentA: known(66, 1, "A", "measured") }).sentence).toMatch(
      /the plan of 55 A; fit less propeller or change the plan\.$/,
    );
    expect(judged({ staticCurrentA: known(44, 1, "A", "measured") }).sentence).toMatch(
      /the plan of 55 A; check propeller and pack, or change the plan\.$/,
    );
  });

  it("lets the measured temperature lead that of the hot day", () => {
    const { sentence } = judged({
      controllerPeakC: known(106, 2, "degC", "measured"),
      controllerHotDayPeakC: known(125, 3, "degC", "predicted"),
    });
    expect(sentence).toMatch(/^Limit passed: controller peak 106\.0/);
  });

  it("never calls anything safe", () => {
    expect(judged({}).sentence).not.toMatch(/safe|guarantee|OK to fly/i);
    expect(judged({}).sentence).toContain(
      "plan and limits held in the 7 lines that could be judged; 1 could not",
    );
  });
});
