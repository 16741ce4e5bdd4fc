import { describe, expect, it } from "vitest";
import { NO_BUDGET } from "../../../src/aircraft/budget.ts";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { judgeFlight } from "../../../src/flight/judgement/index.ts";
import { FLIGHT, REST, type Stretch, syntheticRecording, TAXI } from "../../support/syntheticRecording.ts";

const DAY = { ambientC: 20, startPct: null };
const CHANNELS = [
  "packVoltage",
  "current",
  "shaftSpeed",
  "altitude",
  "throttle",
  "controllerTemperature",
] as const;
const START: readonly Stretch[] = [REST, TAXI, FLIGHT];
const BUDGET = { ...NO_BUDGET, planned: { ...NO_BUDGET.planned, meanCurrentA: 24, minCellV: 3 } };

/** A flight at 30 A, 50 °C and 4.01 V a cell, judged by limits on either side of that. */
function flown(stretches: readonly Stretch[], burstA: number, limitC: number, minLoadedCellV: number) {
  const facts = {
    ...NO_FACTS,
    name: "Example",
    pack: { ...NO_FACTS.pack, cells: 8, minLoadedCellV },
    controller: { ...NO_FACTS.controller, continuousA: 25, burstA, burstS: 1000, limitC },
  };
  const [flight] = analyseRecording(syntheticRecording(stretches, CHANNELS), facts, DAY);
  const judgements = judgeFlight(flight!.measures, flight!.kind, facts, BUDGET);
  const verdicts = Object.fromEntries(judgements.map(({ source, verdict }) => [source, verdict]));
  return { ...flight!, judgements, verdicts };
}

describe("a log that the end of the recording cuts", () => {
  const whole = flown([...START, REST], 60, 100, 3.3);
  const cut = flown(START, 60, 100, 3.3);

  it("does not judge the mean of a part as if it were the flight's", () => {
    expect([whole.complete, cut.complete]).toEqual([true, false]);
    expect(whole.verdicts["planned.meanCurrentA"]).toBe("outside");
    expect(cut.verdicts["planned.meanCurrentA"]).toBe("not judged");
    expect(cut.measures.meanCurrentA).toMatchObject({ doubt: expect.stringContaining("mean of a part") });
    expect(whole.measures.meanCurrentA).not.toHaveProperty("doubt");
  });

  it("passes no peak that the missing part may have gone beyond", () => {
    for (const source of [
      "controller.burstA",
      "controller.burstS",
      "controller.limitC",
      "pack.minLoadedCellV",
      "planned.minCellV",
    ]) {
      expect([source, whole.verdicts[source]]).toEqual([source, "within"]);
      expect([source, cut.verdicts[source]]).toEqual([source, "not judged"]);
    }
    const because = cut.judgements.find(({ source }) => source === "pack.minLoadedCellV")!.text;
    expect(because).toContain("3.30 V: the log is cut, so it may have gone lower");
  });

  it("opens peaks above and lowest volts and margins below, with value and known end as before", () => {
    const { measures } = cut;
    for (const name of ["peakCurrentA", "peakPowerW", "peakRpm", "controllerPeakC", "overRatingS"] as const) {
      expect(measures[name], name).toMatchObject({ bound: "atLeast", high: null });
    }
    for (const name of ["minPackV", "minCellV", "controllerMarginC"] as const) {
      expect(measures[name], name).toMatchObject({ bound: "atMost", low: null });
    }
    const { value, low } = whole.measures.peakCurrentA as { value: number; low: number };
    expect(measures.peakCurrentA).toMatchObject({ value, low });
  });

  it("keeps what was seen beyond a limit outside it", () => {
    const beyond = flown(START, 20, 40, 4.1);
    for (const source of ["controller.burstA", "controller.limitC", "pack.minLoadedCellV"]) {
      expect([source, beyond.verdicts[source]]).toEqual([source, "outside"]);
    }
  });

  it("does the same where the beginning is missing", () => {
    const { verdicts } = flown([FLIGHT, REST], 60, 100, 3.3);
    expect([verdicts["controller.burstA"], verdicts["planned.meanCurrentA"]]).toEqual([
      "not judged",
      "not judged",
    ]);
  });
});
