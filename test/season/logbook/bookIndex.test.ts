import { describe, expect, it } from "vitest";
import { atLeast, between, known } from "../../../src/base/quantity/index.ts";
import {
  frontLength,
  isReadableIndex,
  readFront,
  readIndex,
  readPlacesIn,
} from "../../../src/season/logbook/bookIndex.ts";
import { isSameFlight } from "../../../src/season/logbook/fingerprint.ts";
import { indexTextOf } from "../../../src/season/logbook/index.ts";
import { OFTEN } from "../../../src/season/logbook/oftenMeasures.ts";
import { entryWith } from "./entries.ts";

const digest = (text: string | Uint8Array): string => `${text.length}`.padStart(16, "0");
const plain = (entry: object): unknown => JSON.parse(JSON.stringify(entry));

describe("the index", () => {
  const entries = [
    entryWith({
      flight: 'é\u2028\t"1',
      given: { note: "ünï\ncode" },
      measures: {
        peakCurrentA: known(1 / 3, 0.1, "A", "measured", { sample: { atS: 0.1, line: 7 } }),
        flightTimeS: between(300.1, 290, 310, "s", "derived", { bound: "interval", why: "from power" }),
        energyUsedWh: atLeast(40, 39, "Wh", "estimated", "cut"),
      },
    }),
    entryWith({ flight: "two", sequence: 2, currentScale: 1.1 }),
  ];

  it("gives every number back to the last digit, in plain ASCII", () => {
    const text = indexTextOf({ entries, damaged: [{ path: "flights/x.json", why: "ö" }] }, digest);
    expect(text).toMatch(/^[\n\t\x20-\x7E]*$/);
    const read = readIndex(text);
    expect(read.damaged).toEqual([{ path: "flights/x.json", why: "ö" }]);
    expect(read.entries.map(plain)).toEqual(entries.map(plain));
    expect(read.entries[0]?.check.measures.peakCurrentA).toEqual(entries[0]?.check.measures.peakCurrentA);
    expect(indexTextOf(read, digest)).toBe(text);
  });

  it("holds in its front what a timer needs, the same numbers", () => {
    const text = indexTextOf({ entries, damaged: [{ path: "flights/x.json", why: "ö" }] }, digest);
    const front = readFront(text.slice(0, frontLength(text)));
    expect(front?.damaged).toEqual([{ path: "flights/x.json", why: "ö" }]);
    expect(front?.entries).toHaveLength(entries.length);
    for (const [at, brief] of (front?.entries ?? []).entries()) {
      const { flight, aircraft, given, facts, load, check } = entries[at]!;
      expect(brief).toMatchObject({ flight, aircraft, given, facts, load });
      expect(brief.check).toMatchObject({ kind: check.kind, complete: check.complete });
      for (const name of OFTEN) expect(brief.check.measures[name]).toEqual(check.measures[name]);
    }
  });

  it("keeps the rows of flights known by their places alone, in any order, beside new ones", () => {
    const text = indexTextOf({ entries, damaged: [] }, digest);
    const places = readPlacesIn(text);
    const [one, two] = places?.entries ?? [];
    expect(one).toMatchObject({ flight: entries[0]?.flight, sequence: 1, log: entries[0]?.log });
    expect(one).not.toHaveProperty("facts");
    expect(indexTextOf(places!, digest)).toBe(text);
    const three = entryWith({ flight: "three", currentScale: 1.2 });
    const mixed = indexTextOf({ entries: [two!, three, one!], damaged: [] }, digest);
    const plainly = indexTextOf({ entries: [entries[1]!, three, entries[0]!], damaged: [] }, digest);
    expect(readIndex(mixed).entries.map(plain)).toEqual(readIndex(plainly).entries.map(plain));
    expect(readFront(mixed)?.entries.map(plain)).toEqual(readFront(plainly)?.entries.map(plain));
    expect(mixed.split("\n").slice(1)).toEqual(plainly.split("\n").slice(1));
    const onlyNew = indexTextOf({ entries: [three], damaged: [] }, digest);
    expect(readIndex(onlyNew).entries.map(plain)).toEqual([plain(three)]);
    expect(readPlacesIn(indexTextOf({ entries: [], damaged: [] }, digest))?.entries).toEqual([]);
  });

  it("of a release with other measures is read whole and written anew; of another kind it is not read", () => {
    const text = indexTextOf({ entries, damaged: [] }, digest);
    const moved = text
      .replace('"often":["flightTimeS",', '"often":[')
      .replace('"seldom":[', '"seldom":["flightTimeS",');
    const rows = moved.split("\n");
    const other = [...rows.slice(0, -3), ...rows.slice(-3).map((row) => row.replace(/^\[/, '["moved",'))];
    expect(readFront(other.join("\n"))).toBeNull();
    const read = readIndex(other.join("\n"));
    expect(read.entries.map(({ check }) => check.measures.energyUsedWh)).toEqual(
      entries.map(({ check }) => check.measures.energyUsedWh),
    );
    expect(indexTextOf(read, digest)).toBe(text);
    expect(isReadableIndex(text)).toBe(true);
    expect(isReadableIndex(text.replace('"index":4', '"index":5'))).toBe(false);
  });

  it("has measures like any others: listed, spread, asked for in any order", () => {
    const [entry] = readIndex(indexTextOf({ entries, damaged: [] }, digest)).entries;
    const measures = entry?.check.measures;
    expect({ ...measures }).toEqual(entries[0]?.check.measures);
    expect("peakRpm" in (measures ?? {})).toBe(true);
    expect(Object.keys(measures ?? {})).toHaveLength(Object.keys(entries[0]?.check.measures ?? {}).length);
  });
});

describe("isSameFlight", () => {
  const curve = [100, 350, 600, 850, 1100, 1350, 1600, 1850];
  const flight = (fingerprint: readonly number[] | null, startedAt: string | null = null, endS = 310) => ({
    fingerprint,
    check: { startedAt, startS: 10, endS },
  });

  it("knows the same curve again, rounded, in another time zone or without a clock", () => {
    const rounded = curve.map((mah) => mah + 2);
    expect(isSameFlight(flight(curve, "10:00:41"), flight(rounded, "2026-06-14 12:00:42"))).toBe(true);
    expect(isSameFlight(flight(curve, "10:00:41"), flight(rounded))).toBe(true);
  });

  it("tells other clocks, curves and lengths apart", () => {
    expect(isSameFlight(flight(curve, "10:00:41"), flight(curve, "10:12:41"))).toBe(false);
    expect(isSameFlight(flight(curve), flight(curve.map((mah, at) => mah + 9 * at)))).toBe(false);
    expect(isSameFlight(flight(curve), flight(curve, null, 320))).toBe(false);
    expect(isSameFlight(flight(null), flight(null))).toBe(false);
  });
});
