import { describe, expect, it } from "vitest";
import { isKnown, quantityText } from "../../../src/base/quantity/index.ts";
import { MEASURE_NAMES } from "../../../src/flight/analysis/index.ts";
import type { Judgement } from "../../../src/flight/judgement/index.ts";
import { escapeHtml } from "../../../src/show/charts/index.ts";
import { REPORT_SCRIPT } from "../../../src/show/report/assets/generated.ts";
import { flightReport } from "../../../src/show/report/index.ts";
import { measureTitle } from "../../../src/show/report/measureMethods.ts";
import { CAUTIONS, limitsPassedSentence, NO_BUDGET_TEXT } from "../../../src/show/report/sentences.ts";
import { sampleInput, sampleInputOfTwo, sampleQuestion } from "../../support/sampleCheck.ts";

const input = sampleInput();
const report = flightReport(input);

describe("flightReport", () => {
  it("puts the policy before anything that could ask for something", () => {
    expect(report).toMatch(
      /<head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-[\w+/=]+'; style-src 'sha256-[\w+/=]+'; img-src data:; base-uri 'none'; form-action 'none'">/,
    );
  });

  it("refers to nothing outside itself and carries no inline style or handler", () => {
    expect(report.match(/https?:|\/\/|url\(|\sstyle="|\son\w+="|src="|href="/g)).toBeNull();
  });

  it("begins with the headline, then the budget, then the charts", () => {
    const places = [
      escapeHtml(input.checked.check.flights[0]?.headline ?? "?"),
      'id="f1-budget"',
      'data-panel="power"',
      'id="f1-numbers"',
      'id="columns"',
      'id="repairs"',
      'id="cautions"',
      'id="methods"',
    ].map((text) => report.indexOf(text));
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("says every measure with its interval, or why it is not known", () => {
    const measures = input.checked.check.flights[0]?.measures;
    for (const name of MEASURE_NAMES) {
      const quantity = measures?.[name];
      if (quantity === undefined) throw new Error(`the sample lacks ${name}`);
      const text = isKnown(quantity) ? quantityText(quantity) : quantity.why.slice(1);
      expect(report.includes(escapeHtml(text)), name).toBe(true);
      expect(report.includes(escapeHtml(measureTitle(name))), name).toBe(true);
    }
  });

  it("says each verdict as a word", () => {
    for (const word of ["within", "close", "outside", "not judged"])
      expect(report.includes(`<b>${word}</b>`)).toBe(true);
  });

  it("lists what was left out by file line, and the holes", () => {
    expect(report.includes("12.4 V")).toBe(true);
    expect(report.includes("14.2 s")).toBe(true);
    expect(report.includes("(lines 410, 411 and 988)")).toBe(true);
  });

  it("gives the same bytes for the same input, whatever the zone", () => {
    const zone = process.env.TZ;
    process.env.TZ = "Pacific/Auckland";
    expect(flightReport(sampleInput())).toBe(report);
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  it("stays under 600 kB for 6000 rows with every panel full", () => {
    const full = flightReport(sampleInput({ rows: 6000, cellChannels: true, moreTemperatures: true }));
    expect(new TextEncoder().encode(full).length).toBeLessThan(600_000);
  });

  it("stays under 600 kB for 500 000 rows and keeps the lone peak", () => {
    const long = flightReport(sampleInput({ rows: 500_000 }));
    expect(new TextEncoder().encode(long).length).toBeLessThan(600_000);
    expect(long.includes("78.4 A")).toBe(true);
    expect(/The cursor steps over the \d+ of \d+ rows/.test(long)).toBe(true);
  });

  it("holds at most 200 rows in any table of a chart", () => {
    const long = flightReport(sampleInput({ rows: 50_000 }));
    const bodies = [...long.matchAll(/<details class="table">.*?<tbody>(.*?)<\/tbody>/gs)].map(
      (match) => match[1] ?? "",
    );
    // Five over time, then pack, heat and load.
    expect(bodies).toHaveLength(8);
    for (const body of bodies) expect(body.split("<tr>").length - 1).toBeLessThanOrEqual(200);
  });

  it("never writes a number that is not one", () => {
    for (const text of [report, flightReport(sampleInputOfTwo()), flightReport(sampleQuestion())]) {
      expect(text.replace(REPORT_SCRIPT, "").match(/NaN|Infinity|undefined|\[object/g)).toBeNull();
    }
  });

  it("gives each flight of a log its own section", () => {
    const two = flightReport(sampleInputOfTwo());
    expect(two.includes("Flight 1 of 2")).toBe(true);
    expect(two.includes("Flight 2 of 2")).toBe(true);
    expect(two.match(/data-panel="power"/g)).toHaveLength(2);
    expect(new Set(two.match(/ id="[^"]+"/g)).size).toBe(two.match(/ id="[^"]+"/g)?.length);
  });

  it("heads a bench run's limits as a go or no-go list", () => {
    const bench = flightReport(sampleInput({ kind: "benchRun" }));
    expect(bench.includes("Go or no-go list")).toBe(true);
    expect(/No go: \d limits? (is|are) passed/.test(bench)).toBe(true);
  });

  it("asks to find out before it says go for a bench run while the aircraft file lacks a limit", () => {
    const benchInput = sampleInput({ kind: "benchRun" });
    const [run] = benchInput.checked.check.flights;
    const [limit] = run?.judgements.filter(({ against }) => against === "limit") ?? [];
    if (run === undefined || limit === undefined) throw new Error("the sample holds no limit");
    const leadWith = (judgements: readonly Judgement[]) => {
      const check = { ...benchInput.checked.check, flights: [{ ...run, judgements }] };
      return flightReport({ ...benchInput, checked: { ...benchInput.checked, check } });
    };
    const held: Judgement = { ...limit, verdict: "within" };
    const absent: Judgement = { ...limit, line: "peakPowerW", value: null, verdict: "not judged" };
    expect(leadWith([held])).toContain(limitsPassedSentence(0, 0, 0));
    expect(leadWith([held, absent])).toContain(limitsPassedSentence(0, 0, 1));
  });

  it("says what settles a question, and nothing of a flight", () => {
    const question = flightReport(sampleQuestion());
    expect(question.includes("<code>--column current=#3</code>")).toBe(true);
    expect(question.includes("The budget")).toBe(false);
    expect(question.length).toBeLessThan(60_000);
  });

  it("gives each part of the aircraft its picture, its numbers and what it means", () => {
    for (const [id, words] of [
      ["f1-why", "The plan itself"],
      ["f1-pack", "Resistance one second after a step"],
      ["f1-heat", "Full throttle until the limit of 85 °C at 54.8 A, on a day of 35 °C"],
      ["f1-load", "In flight, power coefficient over static"],
    ] as const) {
      const from = report.indexOf(`<h3 id="${id}">`);
      const section = report.slice(from, report.indexOf("</section>", from));
      expect(section, id).toContain(words);
      expect(section.includes('role="img"'), id).toBe(id !== "f1-why");
    }
    const [meaning] = input.checked.meanings;
    for (const sentence of [...meaning!.pack, ...meaning!.heat, ...meaning!.load]) {
      expect(report).toContain(escapeHtml(sentence));
    }
    expect(report.match(/class="step-bar"/g)?.length).toBeGreaterThan(4);
  });

  it("says in the section what could not be found, and why", () => {
    const [flight] = input.checked.check.flights;
    const [analysed] = input.checked.analysed;
    if (flight === undefined || analysed === undefined) throw new Error("the sample holds no flight");
    const heat = { ...analysed.pictures.heat, measured: null, modelled: null, hotDay: null };
    const load = { ...analysed.pictures.load, lines: null, why: "needs the motor's kv" };
    const unfound = { value: null, unit: "s", why: "no temperature channel" };
    const measures = { ...flight.measures, controllerTimeConstantS: unfound };
    const bare = flightReport({
      ...input,
      checked: {
        ...input.checked,
        check: { ...input.checked.check, flights: [{ ...flight, measures }] },
        analysed: [{ ...analysed, pictures: { ...analysed.pictures, heat, load } }],
      },
    });
    expect(bare).toContain("Heating and cooling were not found: no temperature channel.");
    expect(bare).toContain(escapeHtml("cannot be set against each other: needs the motor's kv."));
    expect(bare).not.toContain('data-panel="heat"');
    expect(bare).not.toContain('data-panel="load"');
  });

  it("says so when there is no budget", () => {
    const [flight] = input.checked.check.flights;
    if (flight === undefined) throw new Error("the sample holds no flight");
    const check = { ...input.checked.check, flights: [{ ...flight, judgements: [] }] };
    expect(flightReport({ ...input, checked: { ...input.checked, check } })).toContain(NO_BUDGET_TEXT);
  });

  it("states hazard, consequence and how to avoid in each caution and promises nothing", () => {
    for (const { hazard, consequence, avoid } of CAUTIONS) {
      for (const part of [hazard, consequence, avoid]) expect(report.includes(escapeHtml(part))).toBe(true);
    }
    expect(report.match(/guaranteed|OK to fly|\bsafe\b/gi)).toBeNull();
  });
});
