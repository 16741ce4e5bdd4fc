import { describe, expect, it } from "vitest";
import { asCalled, programName } from "../../src/apps/commands/programName.ts";
import { answeredWords } from "../../src/apps/commands/shellWord.ts";
import { runInMemory } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT, sampleLog, sampleLogWithoutTime } from "./sampleLog.ts";

const files = {
  "flight.csv": sampleLog(),
  "timeless.csv": sampleLogWithoutTime(),
  "heron.json": SAMPLE_AIRCRAFT,
};

describe("the name to call the program by", () => {
  it("is its own where it is on the user's path, else npx", () => {
    const isFile = (path: string) => path === "/usr/bin/tallywatt" || path.includes("node_modules/.bin/");
    expect(programName("/bin:/usr/bin", ":", isFile)).toBe("tallywatt");
    expect(programName("/models/node_modules/.bin:/bin", ":", isFile)).toBe("npx tallywatt");
    expect(programName("", ":", isFile)).toBe("npx tallywatt");
  });

  it("stands in every line to type, and in no JSON", async () => {
    const setting = { files, program: "npx tallywatt" };
    const checked = await runInMemory(["check", "flight.csv"], setting);
    expect(checked.out).toContain("Next: npx tallywatt new aircraft.json");
    const asked = await runInMemory(["check", "timeless.csv"], setting);
    expect(asked.err).toMatch(/try: npx tallywatt check timeless.csv --rate \d+$/m);
    const help = await runInMemory(["check", "--help"], setting);
    expect(help.out).toMatch(/^ {2}npx tallywatt check flight.csv$/m);
    const missing = await runInMemory(["check", "flight.csv", "--aircraft", "no.json"], setting);
    expect(missing.err).toContain("To start one: npx tallywatt new no.json");
    expect(asCalled('{"a": "To start one: tallywatt new x"}', "npx tallywatt")).not.toContain("npx");
    expect(asCalled("tallywatt met a fault of its own: x", "tallywatt")).toMatch(/^tallywatt met/);
  });
});

describe("the line to try", () => {
  it.each([
    ["--rate 5", "--rate 10", "--rate 10"],
    ["--unit current=mA --json", "--unit current=A", "--json --unit current=A"],
    ["--unit time=s", "--unit current=A", "--unit time=s --unit current=A"],
    ["--column current=Amps --cells 4", "--column current=#3", "--cells 4 --column current=#3"],
    ["--cells 4", "--cells 6", "--cells 6"],
  ])("%s answered by %s is %s", (given, answer, words) => {
    expect(answeredWords(given.split(" "), answer).join(" ")).toBe(words);
  });

  it("takes the place of the bad answer", async () => {
    const { err } = await runInMemory(["check", "flight.csv", "--cells", "2"], { files });
    const tries = err.split("\n").filter((line) => line.includes("try: "));
    expect(tries.length).toBeGreaterThan(0);
    expect(new Set(tries).size).toBe(tries.length);
    for (const line of tries) expect(line.match(/--cells/g)?.length).toBe(1);
  });
});

describe("after the report", () => {
  it("the next step is not how the columns were read", async () => {
    const { out } = await runInMemory(["check", "flight.csv", "--aircraft", "heron.json", "--report"], {
      files,
    });
    expect(out).toMatch(/Next: tallywatt add flight\.csv --aircraft heron\.json\n$/);
  });
});
