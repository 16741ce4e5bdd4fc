import { describe, expect, it } from "vitest";
import { known } from "../../../src/base/quantity/index.ts";
import type { LogbookEntry } from "../../../src/season/logbook/index.ts";
import {
  budgetOverSeason,
  fittingChanges,
  flightVerdicts,
  groupedPoints,
  groupSize,
  judgementsOf,
  MOST_SINGLE_FLIGHTS,
  numberRanges,
  packsOverSeason,
  seasonCounts,
  seasonFlights,
  seasonHeadline,
  timerFlights,
} from "../../../src/season/overview/index.ts";
import { measuresOf } from "../../support/measuresOf.ts";
import { SAMPLE_BUDGET } from "../../support/sampleCheck.ts";
import { sampleSeason } from "../../support/sampleSeason.ts";

const season = sampleSeason({ flights: 15 });
const flights = seasonFlights(season.entries);
const [first] = season.entries;
if (first === undefined) throw new Error("the sample season is empty");

function entryWith(changed: Partial<LogbookEntry>): LogbookEntry {
  return { ...season.entries[1]!, ...changed };
}

describe("the season's flights", () => {
  it("are counted as the pilot does: a bench run has no number", () => {
    expect(flights.map(({ number }) => number).slice(0, 4)).toEqual([null, 1, 2, 3]);
    expect(flights.map(({ place }) => place)).toEqual([...Array(15).keys()]);
    const counts = seasonCounts(flights);
    expect(counts).toMatchObject({ flights: 14, benchRuns: 1, firstDay: "2026-04-12", flightsWithTime: 13 });
  });

  it("take the pilot's watch for the time in the air", () => {
    const given = { ...first.given, flownS: 100 };
    const [timed] = seasonFlights([entryWith({ given })]);
    expect(seasonCounts([timed!]).flownS).toBe(100);
  });

  it("know their day from the clock, else from the pilot, else not", () => {
    const noClock = { ...first, startsAt: null };
    const days = [first, noClock, { ...noClock, given: { ...first.given, date: null } }].map(
      (entry) => seasonFlights([entry])[0]?.day,
    );
    expect(days).toEqual(["2026-04-12", "2026-04-12", null]);
  });

  it("name each change of a part where it happened", () => {
    const changes = fittingChanges(flights);
    expect(changes.map(({ part, number }) => [part, number])).toEqual([
      ["controller", 1],
      ["propeller", 9],
    ]);
    expect(changes[1]).toMatchObject({ from: "18x8", to: "18x10" });
  });
});

describe("numbers in a sentence", () => {
  it.each([
    [[], ""],
    [[4], "4"],
    [[1, 2], "1 and 2"],
    [[1, 2, 3, 7, 9, 10], "1 to 3, 7, 9 and 10"],
  ])("%j are %s", (numbers, text) => {
    expect(numberRanges(numbers)).toBe(text);
  });
});

describe("verdicts of a flight", () => {
  it("tell the worst of the judged lines and count those without an answer", () => {
    const facts = season.facts;
    const measures = measuresOf({
      peakCurrentA: known(90, 1, "A", "measured"),
      peakPowerW: known(1000, 10, "W", "measured"),
    });
    const entry = entryWith({ facts, check: { ...first.check, kind: "flight", measures } });
    const { limits, plan } = flightVerdicts(judgementsOf(seasonFlights([entry])[0]!, SAMPLE_BUDGET));
    expect(limits?.verdict).toBe("outside");
    expect(limits?.lines).toContain("peakCurrentA");
    expect(limits?.notJudged).toBeGreaterThan(0);
    expect(plan?.verdict).toBe("not judged");
  });

  it("are none without an aircraft", () => {
    const entry = entryWith({ facts: { ...first.facts, name: null } });
    expect(flightVerdicts(judgementsOf(seasonFlights([entry])[0]!, SAMPLE_BUDGET))).toEqual({
      limits: null,
      plan: null,
    });
  });
});

describe("the budget over the season", () => {
  const judged = flights.map((flight) => ({ flight, judgements: judgementsOf(flight, SAMPLE_BUDGET) }));
  const lines = budgetOverSeason(judged);

  it("gives range, median and counts that add up to the flights judged", () => {
    const current = lines.find(({ line, against }) => line === "meanCurrentA" && against === "plan");
    const values = flights.flatMap(({ entry, number }) =>
      number === null ? [] : (entry.check.measures.meanCurrentA.value ?? []),
    );
    expect(current?.lowest).toBe(Math.min(...values));
    expect(current?.highest).toBe(Math.max(...values));
    expect(current?.median).toBeGreaterThan(current?.lowest ?? 0);
    expect(Object.values(current?.counts ?? {}).reduce((sum, count) => sum + count, 0)).toBe(14);
    const worst = flights[current?.worstPlace ?? -1];
    expect(worst?.entry.check.measures.meanCurrentA.value).toBe(current?.highest);
  });

  it("does not mix flights that were judged by another limit", () => {
    const peak = lines.find(({ source }) => source === "controller.limitC");
    const counted = Object.values(peak?.counts ?? {}).reduce((sum, count) => sum + count, 0);
    expect(counted).toBe(14); // The bench run was flown with a controller nobody described.
  });
});

describe("packs side by side", () => {
  it("count flights that share a put-back or a log as one charge", () => {
    const pack = (flight: string, sha256: string, putBackFlights: readonly string[]): LogbookEntry =>
      entryWith({
        flight,
        log: { ...first.log, sha256 },
        given: { ...first.given, pack: "A", putBackFlights },
      });
    const entries = [
      pack("one", "1", []),
      pack("two", "2", ["one", "two"]),
      pack("three", "3", []),
      pack("four", "3", []),
    ];
    const [only] = packsOverSeason(seasonFlights(entries));
    expect(only).toMatchObject({ pack: "A", flights: 4, charges: 2, firstPlace: 0, lastPlace: 3 });
  });

  it("keep first and latest resistance", () => {
    const [a, b] = packsOverSeason(flights);
    expect(a?.pack).toBe("A");
    expect(a?.firstResistance?.value).toBe(first.check.measures.packResistanceMohm.value);
    expect(b?.resistances).toBe(5);
  });
});

describe("grouping for charts", () => {
  it("leaves a short season as it is", () => {
    expect(groupSize(MOST_SINGLE_FLIGHTS)).toBe(1);
    const points = [{ fromPlace: 0, toPlace: 0, value: 1, low: 0, high: 2, flights: 1 }];
    expect(groupedPoints(points, 1)).toBe(points);
  });

  it("gives the median and the extremes of neighbours", () => {
    const points = [3, 9, 4, 8].map((value, place) => ({
      fromPlace: place,
      toPlace: place,
      value,
      low: null,
      high: null,
      flights: 1,
    }));
    expect(groupedPoints(points, 3)).toEqual([
      { fromPlace: 0, toPlace: 2, value: 4, low: 3, high: 9, flights: 3 },
      points[3],
    ]);
    expect(Math.ceil(1000 / groupSize(1000))).toBeLessThanOrEqual(MOST_SINGLE_FLIGHTS);
  });
});

describe("the headline", () => {
  it("says the timer, what sets it and what changed", () => {
    expect(seasonHeadline(season.timer, season.trends)).toMatch(
      /^Timer \d:\d\d from 5 flights, set by the charge; pack resistance \(pack A\) is rising\.$/,
    );
  });

  it("says why there is no timer", () => {
    const none = sampleSeason({ flights: 1 });
    const timer = { ...none.timer, timerS: null, binding: null, why: "no flight counts; add one" };
    expect(seasonHeadline(timer, { ...none.trends, series: [] })).toBe(
      "No timer: no flight counts; no trend can be judged yet.",
    );
  });

  it("groups the flights left out by their reason", () => {
    const { counted, leftOut } = timerFlights(flights, season.timer);
    expect(counted.map(({ number }) => number)).toEqual([10, 11, 12, 13, 14]);
    expect(leftOut.map((group) => group.flights.length)).toEqual([8, 1, 1]);
  });
});
