import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { CHARGE_UNLIKE_REST_VOLTS } from "../../../src/flight/analysis/currentDoubtSentences.ts";
import { knownFromBelieved } from "../../../src/flight/prediction/index.ts";
import { calibrateCurrent } from "../../../src/season/logbook/index.ts";
import { setTimer } from "../../../src/season/timer/index.ts";
import { cutShortLeftOut } from "../../../src/season/timer/sentences.ts";
import { type TrendMeasure, trendsOf } from "../../../src/season/trends/index.ts";
import { lastFlightLeftOut, leftOutWords } from "../../../src/season/trends/sentences.ts";
import { tenthOfCurrent } from "../../support/doubtfulLogs.ts";
import { bookFlights } from "./bookFlights.ts";
import { demoSeason, TERN_AIRCRAFT, ternTruth } from "./demoSeason.ts";

const flights = demoSeason();
const trends = trendsOf(flights, "Tern");
const truth = ternTruth();
const find = (measure: TrendMeasure, of: { pack?: string; propeller?: string }) =>
  trends.series.find(
    (one) =>
      one.measure === measure &&
      one.of.pack === (of.pack ?? null) &&
      one.of.propeller === (of.propeller ?? null),
  );

describe("the trends of the demo season", () => {
  it("find that pack A ages, at the pace of the truth, and claim nothing else", () => {
    const changed = trends.series.filter(({ alarm }) => alarm !== null);
    expect(changed.map(({ measure, of, verdict }) => `${measure} ${of.pack} ${verdict}`)).toEqual([
      "packResistanceMohm A rising",
    ]);
    const slope = find("packResistanceMohm", { pack: "A" })?.slopePerFlight;
    const ofA = truth.logs.filter(({ pack }) => pack === "A").map(({ parts }) => parts.packResistanceMohm);
    const truePace = ((ofA.at(-1) ?? 0) - (ofA[0] ?? 0)) / (ofA.length - 1);
    expect(slope?.value).not.toBeNull();
    // A sensor that reads 2.8 % low makes ohms 2.8 % high; the pack box wanders by half a degree.
    expect(Math.abs((slope?.value ?? 0) / truePace - 1)).toBeLessThan(0.15);
  });

  it("leave out no flight: the cut log's current is as good as any", () => {
    expect(trends.leftOut).toEqual([]);
    expect(
      knownFromBelieved(flights.map((one) => ({ ...one, ...one.check, name: one.flight }))).leftOut,
    ).toEqual([]);
  });

  it("leave a current ten times too small out of every series, and say so", () => {
    const given = { ...flights[8]?.given, putBackMah: null, putBackFlights: [] };
    const odd = bookFlights(Buffer.from(tenthOfCurrent()), TERN_AIRCRAFT, ["tenth"], given);
    const left = leftOutWords([{ flight: "tenth", why: CHARGE_UNLIKE_REST_VOLTS }]).join(" ");
    const amid = trendsOf([...flights.slice(0, 9), ...odd, ...flights.slice(9)], "Tern");
    expect(amid.series).toEqual(trends.series);
    expect(amid.sinceLastFlight).toBe(trends.sinceLastFlight);
    expect(amid.leftOut).toEqual([{ flight: "tenth", why: CHARGE_UNLIKE_REST_VOLTS }]);
    expect(amid.text).toBe(`${trends.text} ${left}`);
    const last = trendsOf([...flights, ...odd], "Tern");
    expect(last.series).toEqual(trends.series);
    expect(last.sinceLastFlight).toBe(lastFlightLeftOut("tenth", CHARGE_UNLIKE_REST_VOLTS));
  });

  it("start a new series for the new propeller and for each pack, and mix none", () => {
    expect(find("controllerRisePerA2", { propeller: "18x8" })?.points.map(({ flight }) => flight)).toEqual(
      ["01", "02", "03", "04", "05", "06", "07", "08"].map((number) => `flight-${number}`),
    );
    expect(find("controllerRisePerA2", { propeller: "18x10" })?.points).toHaveLength(6);
    expect(find("packResistanceMohm", { pack: "B" })?.points).toHaveLength(4);
    const [small, large] = ["18x8", "18x10"].map((propeller) =>
      find("propellerPowerCoefficient", { propeller }),
    );
    expect(small?.points.every(({ value }) => value < 0.04)).toBe(true);
    expect(large?.points.every(({ value }) => value > 0.04)).toBe(true);
  });

  it("hold the truth of heating and coefficient in nine of ten intervals of their points", () => {
    const held = ["18x8", "18x10"].flatMap((propeller) => {
      const parts = truth.logs.find((one) => one.propeller === propeller)?.parts;
      return (["controllerRisePerA2", "propellerPowerCoefficient"] as const).flatMap((measure) => {
        const trueValue = parts?.[measure] ?? Number.NaN;
        const points = find(measure, { propeller })?.points ?? [];
        return points.map(({ low, high }) => (low ?? 0) <= trueValue && trueValue <= (high ?? 0));
      });
    });
    expect(held.length).toBeGreaterThan(20);
    expect(held.filter(Boolean).length / held.length).toBeGreaterThanOrEqual(0.9);
  });

  it("rest on traces of at most 4 kB a flight, none for the bench run", () => {
    for (const { flight, check } of flights) {
      if (check.kind === "benchRun") expect(check.heatTrace, flight).toBeNull();
      else expect(JSON.stringify(check.heatTrace).length, flight).toBeLessThanOrEqual(4096);
    }
  });

  it("say the last flight against the one before in one line, and every sentence is short", () => {
    expect(trends.sinceLastFlight).toMatch(/^Since your last flight on this fitting, flight-13: /);
    const sentences = [trends.text, ...trends.series.map(({ text }) => text)].flatMap((text) =>
      text.split(/(?<=[.!?])\s/),
    );
    for (const sentence of sentences) expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25);
  });
});

describe("the timer of the demo season", () => {
  const next = { pack: "A", ambientC: null, reservePct: 25, startPct: null };
  const timer = setTimer(flights, TERN_AIRCRAFT.facts, next, calibrateCurrent(flights));
  it("rests on the whole flights of the fitted propeller and says why others do not count", () => {
    expect(timer.flights).toBe(5);
    expect(timer.leftOut).toHaveLength(10);
    expect(timer.leftOut.find(({ flight }) => flight === "flight-10")?.why).toBe(cutShortLeftOut());
  });
  it("would have landed each true flight of that propeller with the reserve and a go-around", () => {
    const touchdownS = timer.limits[0]?.touchdownByS ?? Number.NaN;
    const whole = truth.logs
      .flatMap((log) => log.flights.map((flight) => ({ log, flight })))
      .filter(({ log, flight }) => log.propeller === "18x10" && flight.flightTimeS !== null);
    for (const { flight } of whole) {
      const rate = (flight.flightChargeMah ?? 0) / (flight.flightTimeS ?? 1);
      const ground = flight.chargeUsedMah - (flight.flightChargeMah ?? 0);
      // 30 s at a take-off and climb rate of 48 A is 400 mAh.
      expect(ground + rate * touchdownS + 400).toBeLessThanOrEqual(0.75 * 5000);
    }
    expect(whole.length).toBeGreaterThanOrEqual(5);
  });
});

describe("the results as JSON", () => {
  const next = { pack: null, ambientC: null, reservePct: 25, startPct: null };
  it.each([
    ["trend", trends],
    ["trend", trendsOf([], "Tern")],
    ["timer", setTimer(flights, TERN_AIRCRAFT.facts, next, null)],
    ["timer", setTimer([], TERN_AIRCRAFT.facts, next, null)],
  ])("fit the schema of %s and hold no number that JSON cannot", (name, result) => {
    const schema = resolve(import.meta.dirname, `../../../schemas/${name}.schema.json`);
    const fits = new Ajv({ strict: true }).compile(JSON.parse(readFileSync(schema, "utf8")));
    const written = JSON.parse(JSON.stringify(result)) as unknown;
    expect(fits(written), JSON.stringify(fits.errors)).toBe(true);
    expect(written).toEqual(result);
  });
});
