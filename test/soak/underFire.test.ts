import { describe, expect, it } from "vitest";
import { caught, FAMILIES } from "./families.ts";

/** The first faults of a family's short run, with the seed that repeats each. */
function faultsOf(name: string): readonly string[] {
  const family = FAMILIES[name]!;
  const faults: string[] = [];
  for (let seed = 0; seed < family.few && faults.length < 5; seed++) {
    const { fault } = caught(family, seed);
    if (fault !== null) faults.push(`seed ${seed}: ${fault}`);
  }
  return faults;
}

describe("the reader under fire", () => {
  it.each(Object.entries(FAMILIES).map(([name, { few }]) => [name, few]))(
    "%s, %i seeds: nothing thrown, no infinite number, no silent wrong one",
    (name) => expect(faultsOf(String(name))).toEqual([]),
    600_000,
  );
});
