import { describe, expect, it } from "vitest";
import { examplePartsLeft, parseAircraftFile, starterAircraftFile } from "../../src/aircraft/index.ts";

const STARTER = starterAircraftFile("Heron");

function partsLeft(text: string): readonly string[] {
  const read = parseAircraftFile(text, "heron.json");
  if (read.state !== "read") throw new Error(read.notices[0]?.text);
  return examplePartsLeft(read.facts, read.budget);
}

describe("example numbers left in an aircraft file", () => {
  it("names every part of an untouched starter", () => {
    expect(partsLeft(STARTER)).toEqual(["controller", "motor", "planned"]);
  });

  it("passes a part in which one number was changed or deleted", () => {
    expect(partsLeft(STARTER.replace('"continuousA": 94', '"continuousA": 100'))).toEqual([
      "motor",
      "planned",
    ]);
    expect(partsLeft(STARTER.replace(/"noLoadA": .*\n/, ""))).toEqual(["controller", "planned"]);
  });

  it("passes a file that gives none", () => {
    expect(partsLeft('{"name":"Heron","pack":{"cells":6}}')).toEqual([]);
  });
});
