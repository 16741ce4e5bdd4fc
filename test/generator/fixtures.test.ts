import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { goldenFiles, seasonFiles, simulateSeason } from "./index.ts";

const root = resolve(import.meta.dirname, "../..");

function expectSameBytes(folder: string, files: ReadonlyMap<string, Uint8Array>): void {
  const different = [...files].filter(([name, bytes]) => {
    const path = resolve(root, folder, name);
    return !existsSync(path) || !readFileSync(path).equals(bytes);
  });
  expect(different.map(([name]) => name)).toEqual([]);
}

function bytesBelow(folder: string): number {
  return readdirSync(folder, { withFileTypes: true }).reduce((sum, entry) => {
    const path = resolve(folder, entry.name);
    return sum + (entry.isDirectory() ? bytesBelow(path) : statSync(path).size);
  }, 0);
}

describe("the generator", () => {
  it("shares nothing with the program: it imports only its own files", () => {
    const sources = readdirSync(import.meta.dirname).filter((name) => /(?<!\.test)\.ts$/.test(name));
    expect(sources.length).toBeGreaterThan(10);
    for (const name of sources) {
      const text = readFileSync(resolve(import.meta.dirname, name), "utf8");
      const imported = [...text.matchAll(/from "([^"]+)"/g)].map(([, path]) => path!);
      expect(imported.filter((path) => !path.startsWith("./"))).toEqual([]);
    }
  });
});

describe("fixtures", () => {
  it("are what the season generator writes, byte for byte", () => {
    expectSameBytes("fixtures/tern", seasonFiles());
  });

  it("hold the golden cases as generated, byte for byte", () => {
    expectSameBytes("test/golden", goldenFiles());
  });

  it("stay under 2.5 MB together", () => {
    const bytes = bytesBelow(resolve(root, "fixtures")) + bytesBelow(resolve(root, "test/golden"));
    expect(bytes).toBeLessThan(2.5e6);
  });

  it("have a README line on how each folder was made", () => {
    for (const folder of ["fixtures/tern", "test/golden"]) {
      expect(readFileSync(resolve(root, folder, "README.md"), "utf8")).toMatch(/Made by/);
    }
  });
});

describe("the demo season", () => {
  const season = simulateSeason();
  const numbered = season.flatMap(({ log }) => log.flights);

  it("has a bench run and flights 1 to 14, eight on the 18x8 and six on the 18x10", () => {
    expect(numbered).toEqual(Array.from({ length: 14 }, (_, index) => index + 1));
    expect(season.filter(({ log }) => log.flights.length === 0)).toHaveLength(1);
    const flightsOn = (propeller: string) =>
      season.filter(({ log }) => log.propeller === propeller).flatMap(({ log }) => log.flights).length;
    expect(flightsOn("18x8")).toBe(8);
    expect(flightsOn("18x10")).toBe(6);
  });

  it("has put-backs for half of the flights, one log cut in flight, one with two flights, one with dropouts", () => {
    const withPutBack = season.filter(({ putBackMah }) => putBackMah !== null);
    expect(withPutBack.flatMap(({ log }) => log.flights)).toHaveLength(7);
    const cut = season.filter(({ simulated }) => simulated.truth.sorties.some(({ complete }) => !complete));
    expect(cut.map(({ log }) => log.flights)).toEqual([[10]]);
    expect(season.filter(({ simulated }) => simulated.truth.sorties.length === 2)).toHaveLength(1);
    expect(season.filter(({ log }) => log.dropOuts !== undefined)).toHaveLength(1);
  });

  it("lets pack A age by more than a fifth and pack B hardly", () => {
    const resistances = (pack: string) =>
      season
        .filter(({ log }) => log.pack === pack && log.flights.length > 0)
        .map(({ simulated }) => simulated.truth.parts.packResistanceMohm);
    const growth = (pack: string) => resistances(pack).at(-1)! / resistances(pack)[0]!;
    expect(growth("A")).toBeGreaterThan(1.2);
    expect(Math.abs(growth("B") - 1)).toBeLessThan(0.03);
  });
});
