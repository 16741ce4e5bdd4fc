import { describe, expect, it } from "vitest";
import { minutesAndSeconds, plainNumber } from "../../../../src/base/quantity/index.ts";
import { escapeHtml } from "../../../../src/show/charts/index.ts";
import { REPORT_SCRIPT } from "../../../../src/show/report/assets/generated.ts";
import { seasonReport } from "../../../../src/show/report/index.ts";
import * as sentences from "../../../../src/show/report/season/sentences.ts";
import { sampleSeason } from "../../../support/sampleSeason.ts";

const input = sampleSeason({ flights: 15, hasLinks: true });
const report = seasonReport(input);
const bytes = (text: string) => new TextEncoder().encode(text).length;

describe("seasonReport", () => {
  it("puts the policy with both styles before anything that could ask for something", () => {
    expect(report).toMatch(
      /<head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-[\w+/=]+'; style-src 'sha256-[\w+/=]+' 'sha256-[\w+/=]+'; img-src data:; base-uri 'none'; form-action 'none'">/,
    );
  });

  it("refers to nothing but the flights' own reports and carries no inline style or handler", () => {
    const links = [...report.matchAll(/href="([^"]*)"/g)].map((match) => match[1] ?? "");
    expect(links).toHaveLength(15);
    expect(links.every((link) => /^season-flights\/flight-\d+\.html$/.test(link))).toBe(true);
    expect(report.match(/https?:|\/\/|url\(|\sstyle="|\son\w+="|src="/g)).toBeNull();
  });

  it("begins with the headline and the timer, then trends, heat, flights, packs, plan", () => {
    const { timerS } = input.timer;
    const places = [
      '<p class="headline">Timer ',
      'class="since"',
      'id="timer"',
      `>${minutesAndSeconds(timerS ?? 0)}</b>`,
      'id="trends"',
      'id="heat"',
      'id="flights"',
      'id="packs"',
      'id="plan"',
      'id="calibration"',
      'id="cautions"',
      'id="methods"',
    ].map((text) => report.indexOf(text));
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("explains the timer: limits, every term, cautious timer, one more flight, who counts and who not", () => {
    for (const { what } of input.timer.explained) {
      expect(report, what).toContain(escapeHtml(what.charAt(0).toUpperCase() + what.slice(1)));
    }
    expect(report).toContain(`>${minutesAndSeconds(input.timer.cautiousTimerS ?? 0)}</b>`);
    expect(report).toContain("sets the timer");
    expect(report).toMatch(/One more flight like these would add/);
    expect(report).toContain("It rests on 5 flights: flights 10 to 14.");
    expect(report).toContain("<b>Flights 1 to 8</b>: flown on 18x8, fitted is 18x10");
    expect(report).toContain("<b>Flight 9</b>: its log is not complete");
  });

  it("says in words where a new series begins and what each trend found", () => {
    expect(report).toContain("From flight 9: propeller 18x10 instead of 18x8.");
    expect(report).toContain("Pack A, a change found:");
    expect(report).toContain("Since flight : pack resistance");
  });

  it("draws the value that a series truly heads for as a limit", () => {
    const series = input.trends.series.map((one) => {
      if (one.verdict !== "rising") return one;
      const limitValue = (one.points.at(-1)?.value ?? 0) * 1.02;
      return { ...one, crossing: { limit: "a limit", limitValue, flights: 9, soonest: 6, latest: 20 } };
    });
    const [rising] = series.filter(({ crossing }) => crossing !== null);
    const drawn = seasonReport({ ...input, trends: { ...input.trends, series } });
    const wall = `limit ${plainNumber(rising?.crossing?.limitValue ?? Number.NaN)}`;
    expect(drawn).toContain(wall);
    expect(report).not.toContain(wall);
  });

  it("draws every known value of a panel, and its interval", () => {
    const heat = /data-panel="controller-peak".*?<\/figure>/s.exec(report)?.[0] ?? "";
    const known = input.entries.filter(({ check }) => check.measures.controllerPeakC.value !== null).length;
    expect(heat.match(/<circle/g)).toHaveLength(known);
    expect(/<g class="points.*?<\/g>/s.exec(heat)?.[0].match(/<line/g)).toHaveLength(known);
    expect(heat).toContain("limit 85 °C");
    expect(heat).toContain("plan 75 °C");
    expect(heat).toContain(`${15 - known} of 15 ha`);
  });

  it("says what the charger says of the current sensor", () => {
    expect(report).toContain("7 put-backs say that true current is 102.7 %");
    expect(seasonReport({ ...input, calibration: null })).toContain(sentences.NOT_CALIBRATED);
  });

  it("links nothing where no reports were written, and says how to get them", () => {
    const plain = seasonReport(sampleSeason({ flights: 3 }));
    expect(plain).not.toContain("href=");
    expect(plain).toContain(escapeHtml(sentences.FLIGHTS_WITHOUT_REPORTS));
  });

  it.each([
    "javascript:alert(1).html",
    "/etc/x.html",
    "../x.html",
    "%2e%2e/x.html",
    "a/../x.html",
    "x.html#<b>",
    "file:x.html",
    "a//b.html",
    "\\\\host\\x.html",
  ])("never links %s", (href) => {
    const links = new Map(input.entries.map(({ flight }) => [flight, href]));
    expect(seasonReport({ ...input, flightReportLinks: links })).not.toContain("href=");
  });

  it("gives the same bytes for the same input, whatever the zone", () => {
    const zone = process.env.TZ;
    process.env.TZ = "Pacific/Auckland";
    expect(seasonReport(sampleSeason({ flights: 15, hasLinks: true }))).toBe(report);
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  it.each([0, 1, 2, 15, 1000])("never writes a number that is not one, with %i flights", (flights) => {
    const text = seasonReport(sampleSeason({ flights })).replace(REPORT_SCRIPT, "");
    expect(text.match(/NaN|Infinity|undefined|\[object|not known: </g)).toBeNull();
    const ids = text.match(/ id="[^"]+"/g) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("holds an empty book and a single flight", () => {
    expect(seasonReport(sampleSeason({ flights: 0 }))).toContain(sentences.EMPTY_SEASON);
    const one = seasonReport(sampleSeason({ flights: 1 }));
    expect(one).toContain("1 flight");
    expect(one).toContain(escapeHtml(sentences.NO_SINCE_LAST));
  });

  it("takes at most 2 kB a flight and stays under 3 MB for 1,000 flights", () => {
    const hundred = bytes(seasonReport(sampleSeason({ flights: 100, hasLinks: true })));
    const twoHundred = bytes(seasonReport(sampleSeason({ flights: 200, hasLinks: true })));
    const thousand = bytes(seasonReport(sampleSeason({ flights: 1000, hasLinks: true })));
    expect(twoHundred - hundred).toBeLessThan(100 * 2048);
    expect(thousand - twoHundred).toBeLessThan(800 * 2048);
    expect(thousand).toBeLessThan(3_000_000);
  });

  it("holds at most 200 rows in any table, and every flight in one, for 1,000 flights", () => {
    const long = seasonReport(sampleSeason({ flights: 1000, hasLinks: true }));
    const bodies = [...long.matchAll(/<tbody>(.*?)<\/tbody>/gs)].map((match) => match[1] ?? "");
    expect(bodies.length).toBeGreaterThan(10);
    for (const body of bodies) expect(body.split("<tr>").length - 1).toBeLessThanOrEqual(200);
    expect(long.match(/href="/g)).toHaveLength(1000);
    expect(long.match(/<details class="flights"/g)).toHaveLength(10);
    expect(long).toContain(escapeHtml(sentences.groupedSentence(7)));
  });

  it("states its cautions and promises nothing", () => {
    expect(report).toContain("Warning");
    expect(report).toContain(escapeHtml(sentences.TIMER_IS_A_SUGGESTION));
    expect(report.match(/guaranteed|OK to fly|\bsafe\b/gi)).toBeNull();
  });
});

describe("the season's sentences", () => {
  const said = [
    sentences.calibrationSentence(
      { gain: 1.027, low: 1.006, high: 1.048, putBacks: 7, isScattered: false },
      true,
    ),
    sentences.calibrationSentence(
      { gain: 1.01, low: 0.98, high: 1.04, putBacks: 3, isScattered: false },
      false,
    ),
    sentences.coverageSentence(0.95, 25),
    sentences.oneMoreFlightSentence(12.4, "the charge"),
    sentences.oneMoreFlightSentence(0.2, "the charge"),
    sentences.oneMoreFlightSentence(null, "the controller's temperature on the hot day"),
    sentences.countedSentence("flights 1 to 9", 9),
    sentences.groupedSentence(7),
    sentences.missingSentence(3, 15),
    sentences.rangeSentence("Controller peak", "40 °C", "81 °C", "highest in flight 14"),
    sentences.changeSentence(
      { part: "propeller", place: 9, number: 9, from: "18x8", to: "18x10" },
      { words: "flight 9", short: "9" },
    ),
  ];
  const all = [...Object.values(sentences).flatMap(texts), ...said];

  it("have at most 25 words each", () => {
    const parts = all.flatMap((text) => text.split(/(?<=[.!?:;])\s+/));
    expect(parts.filter((text) => text.split(/\s+/).length > 25)).toEqual([]);
  });

  it("never promise", () => {
    expect(all.filter((text) => /guaranteed|OK to fly|\bsafe\b/i.test(text))).toEqual([]);
  });
});

function texts(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(texts);
}
