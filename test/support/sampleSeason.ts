import { NO_FACTS } from "../../src/aircraft/facts.ts";
import { between, known, type Quantity, unknown } from "../../src/base/quantity/index.ts";
import { RandomNumbers } from "../../src/base/statistics/index.ts";
import type { LogbookEntry } from "../../src/season/logbook/index.ts";
import { setTimer } from "../../src/season/timer/index.ts";
import type { TrendMeasure, TrendOf, TrendResult, TrendSeries } from "../../src/season/trends/index.ts";
import type { SeasonReportInput } from "../../src/show/report/index.ts";
import { measuresOf } from "./measuresOf.ts";
import { SAMPLE_BUDGET, SAMPLE_FACTS } from "./sampleCheck.ts";

/** An invented season made by hand for tests of what is shown. Its numbers are not a model of anything. */
export interface SampleSeasonOptions {
  readonly flights: number;
  /** Text put into every place that can hold text from outside. */
  readonly text?: string;
  readonly hasLinks?: boolean;
}

const SEED = 7;
const FIRST_DAY = Date.UTC(2026, 3, 12);
const DAY_MS = 86_400_000;
const NEW_PROPELLER_AFTER = 0.6;

/** The input of a season report: flights on two packs, a new propeller late in the season, one log cut short. */
export function sampleSeason(options: SampleSeasonOptions): SeasonReportInput {
  const random = new RandomNumbers(SEED);
  const entries = Array.from({ length: options.flights }, (_, at) => sampleEntry(at, options, random));
  const text = options.text ?? "";
  const fitted = { ...SAMPLE_FACTS, name: `Tern${text}` };
  const next = { pack: null, ambientC: null, reservePct: SAMPLE_BUDGET.reservePct, startPct: null };
  const calibration = {
    gain: 1.027,
    low: 1.006,
    high: 1.048,
    putBacks: 7,
    isApplied: true,
    isScattered: false,
    leftOut: [],
  };
  return {
    aircraft: fitted.name,
    entries,
    timer: setTimer(entries, fitted, next, calibration),
    trends: sampleTrends(entries, text),
    facts: fitted,
    budget: SAMPLE_BUDGET,
    calibration,
    release: "0.1.0",
    flightReportLinks: options.hasLinks
      ? new Map(entries.map(({ flight }, at) => [flight, `season-flights/flight-${at + 1}.html`]))
      : null,
  };
}

function sampleEntry(
  at: number,
  { flights, text = "" }: SampleSeasonOptions,
  random: RandomNumbers,
): LogbookEntry {
  const day = new Date(FIRST_DAY + Math.floor((at * 100) / flights) * DAY_MS).toISOString().slice(0, 10);
  const isLate = at >= flights * NEW_PROPELLER_AFTER;
  const wobble = () => 1 + 0.04 * (random.next() - 0.5);
  const airC = 10 + (20 * at) / flights;
  const rate = (isLate ? 7.4 : 6.2) * wobble();
  const lengthS = 350 + 40 * random.next();
  const chargeMah = 200 + (rate * lengthS) / 1;
  const isCut = at === 9;
  return {
    format: "tallywatt/flight",
    version: 1,
    flight: `${day}-${at + 1}${text}`,
    sequence: at,
    aircraft: `Tern${text}`,
    log: {
      path: `logs/${at}.csv`,
      file: `flight-${at + 1}${text}.csv`,
      sha256: String(at).padStart(64, "0"),
      index: 0,
      flights: 1,
      headerSignature: "sample",
    },
    startsAt: `${day}T10:00:00`,
    fingerprint: null,
    given: {
      pack: `${at % 3 === 1 ? "B" : "A"}${text}`,
      propeller: text === "" ? (isLate ? "18x10" : "18x8") : text,
      ambientC: at === 4 ? null : airC,
      startPct: null,
      putBackMah: null,
      putBackFlights: [],
      flownS: null,
      date: day,
      note: at % 5 === 0 || text !== "" ? `calm and clear${text}` : null,
    },
    facts: {
      ...(at === 0 ? { ...SAMPLE_FACTS, controller: NO_FACTS.controller } : SAMPLE_FACTS),
      name: "Tern",
    },
    release: "0.1.0",
    check: {
      kind: at === 0 && flights > 1 ? "benchRun" : "flight",
      startedAt: `${day}T10:00:00`,
      startS: 20,
      endS: 400,
      complete: !isCut,
      headline: "",
      measures: measuresOf({
        flightTimeS: isCut
          ? unknown("s", "the log is cut")
          : between(lengthS, lengthS - 4, lengthS + 6, "s", "derived"),
        chargeUsedMah: known(chargeMah, 0.02 * chargeMah, "mAh", "derived"),
        chargeLeftPct: known(100 - chargeMah / 50, 2, "%", "derived"),
        peakCurrentA: known((isLate ? 74 : 62) * wobble(), 1.5, "A", "measured"),
        meanCurrentA: known(3.6 * rate, 0.5, "A", "derived"),
        peakPowerW: known(1800 * wobble(), 40, "W", "measured"),
        minCellV: known(3.52 * wobble(), 0.02, "V", "measured"),
        controllerPeakC:
          at % 11 === 7 ? unknown("degC", "no probe") : known(45 + airC * wobble(), 2, "degC", "measured"),
        controllerHotDayPeakC: known(78 * wobble(), 4, "degC", "derived"),
        staticCurrentA: known((isLate ? 60 : 52) * wobble(), 1, "A", "measured"),
        packResistanceMohm: resistance(at, flights, wobble()),
        packResistance10sMohm: known(52, 3, "mohm", "estimated"),
      }),
    },
    load: {
      climbS: 20,
      climbChargeMah: 300,
      rateMahPerS: rate,
      groundChargeMah: 90,
      approachS: 40,
      peakCurrentA: 60,
      meanSquareCurrentA2: 700,
      meanDriverA2: null,
    },
  };
}

function resistance(at: number, flights: number, wobble: number): Quantity {
  const grown = at % 3 === 1 ? 41 : 40 * (1 + (0.3 * at) / flights);
  return known(grown * wobble, 1.6, "mohm", "estimated");
}

function sampleTrends(entries: readonly LogbookEntry[], text: string): TrendResult {
  const values = (pack: number) =>
    entries.flatMap(({ flight, check }, at) => {
      const { value, ...more } = check.measures.packResistanceMohm;
      const { low = null, high = null } = "low" in more ? more : {};
      return value === null || (at % 3 === 1) !== (pack === 1) ? [] : [{ flight, value, low, high }];
    });
  const rates = (isLate: boolean) =>
    entries.flatMap(({ flight, load }, at) => {
      const own = at >= entries.length * NEW_PROPELLER_AFTER === isLate;
      return load === null || !own ? [] : [{ flight, value: load.rateMahPerS, low: null, high: null }];
    });
  const of = (pack: string | null, propeller: string | null): TrendOf => ({
    pack,
    propeller,
    controller: null,
  });
  return {
    format: "tallywatt/trend",
    version: 1,
    aircraft: "Tern",
    series: [
      series("packResistanceMohm", of(`A${text}`, null), values(0), "rising", text),
      series("packResistanceMohm", of(`B${text}`, null), values(1), "not judged", text),
      series("chargeRateMahPerS", of(null, `18x8${text}`), rates(false), "no change shown", text),
      series("chargeRateMahPerS", of(null, `18x10${text}`), rates(true), "not judged", text),
    ].filter(({ points }) => points.length > 0),
    leftOut: [],
    sinceLastFlight:
      entries.length < 2 ? null : `Since flight ${text}: pack resistance +1.2 %, charge rate −0.8 %.`,
    text: "1 of 4 series changed.",
  };
}

function series(
  measure: TrendMeasure,
  of: TrendOf,
  points: TrendSeries["points"],
  verdict: TrendSeries["verdict"],
  text: string,
): TrendSeries {
  const slopePerFlight =
    points.length < 3 ? unknown("1/flight", "too few") : between(0.4, 0.2, 0.6, "mohm/flight", "derived");
  const words = verdict === "rising" ? "rising by about 1.1 % a charge (+0.5 to +1.7 % a charge)" : verdict;
  return {
    measure,
    of,
    points,
    slopePerFlight,
    verdict,
    alarm: null,
    crossing: null,
    text: `Series${text}: ${words}.`,
  };
}
