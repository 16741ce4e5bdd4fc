import { describe, expect, it } from "vitest";
import { measureChanges } from "../../src/apps/commands/logbook/measureChanges.ts";
import { between, type Quantity, unknown } from "../../src/base/quantity/index.ts";
import { MEASURE_NAMES, type Measures } from "../../src/flight/analysis/index.ts";

const of = (packResistanceMohm: Quantity): Measures => {
  const none = MEASURE_NAMES.map((name) => [name, unknown("1", "not logged")] as const);
  return { ...Object.fromEntries(none), packResistanceMohm } as Measures;
};
const ohm = (share: number): Quantity => between(34 * share, 32 * share, 36 * share, "mohm", "derived");

describe("what a recheck calls a change", () => {
  it.each([
    ["the same", ohm(1), ohm(1), false],
    ["another engine's last digits", ohm(1), ohm(1 + 4e-11), false],
    ["another number, be it small", ohm(1), ohm(1 + 1e-8), true],
    ["a number that is known now", unknown("mohm", "no current"), ohm(1), true],
    ["another reason", unknown("mohm", "no current"), unknown("mohm", "no volts"), true],
  ])("%s", (_what, before, after, isChange) => {
    const found = measureChanges(of(before), of(after)).map(({ measure }) => measure);
    expect(found).toEqual(isChange ? ["packResistanceMohm"] : []);
  });
});
