import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { TrendResult } from "../../../src/season/trends/index.ts";
import { runInMemory } from "../../commands/inMemory.ts";

const folder = resolve(import.meta.dirname, "../../../fixtures/tern");
const files = {
  "tern.json": readFileSync(resolve(folder, "aircraft.json")),
  "one.csv": readFileSync(resolve(folder, "flight-13.csv")),
};

describe("tallywatt trend", () => {
  it("answers from the book, in at most ten lines or as JSON", async () => {
    const added = await runInMemory(
      ["add", "one.csv", "--aircraft", "tern.json", "--book", "book", "--pack", "A", "--ambient", "28"],
      { files },
    );
    expect(added.err + added.out).toContain("one");
    expect(added.exit).toBe(0);
    const kept = Object.entries(added.files).find(([path]) => /flights\/one\.json$/.test(path))?.[1];
    const { check } = JSON.parse(kept ?? "{}") as { check?: { heatTrace?: { temperatureC: string } } };
    expect(check?.heatTrace?.temperatureC.split(" ").length).toBeGreaterThan(100);
    const told = await runInMemory(["trend", "--book", "book"], { files: added.files });
    expect(told.exit, told.err).toBe(0);
    expect(told.out.trim().split("\n").length).toBeLessThanOrEqual(10);
    const json = await runInMemory(["trend", "--book", "book", "--aircraft", "Tern", "--json"], {
      files: added.files,
    });
    const result = JSON.parse(json.out) as TrendResult;
    expect(result).toMatchObject({ format: "tallywatt/trend", version: 1, aircraft: "Tern" });
    const heating = result.series.find(({ measure }) => measure === "controllerRisePerA2");
    expect(heating?.of).toMatchObject({ pack: null, propeller: "18x10" });
    expect(heating?.points).toHaveLength(1);
    expect(heating?.verdict).toBe("not judged");
    expect(json.out).not.toContain("NaN");
  });

  it("asks or says why when there is no book or no such aircraft", async () => {
    const nothing = await runInMemory(["trend", "--book", "nowhere"]);
    expect([3, 4]).toContain(nothing.exit);
    expect(nothing.err).not.toBe("");
  });
});
