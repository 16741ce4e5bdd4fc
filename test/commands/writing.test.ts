import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parseAircraftFile } from "../../src/aircraft/index.ts";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import type { Failure } from "../../src/apps/commands/failure.ts";
import { reasonOf } from "../../src/apps/commands/failure.ts";
import { writeReport } from "../../src/apps/commands/writeOutput.ts";
import { MemoryDisk } from "../folderBook/memoryDisk.ts";
import { ioOn, PACKAGE_FOLDER, runInMemory, textsOf } from "./inMemory.ts";
import { SAMPLE_AIRCRAFT, sampleLog } from "./sampleLog.ts";

const files = { "flight.csv": sampleLog(), "other.csv": sampleLog(), "heron.json": SAMPLE_AIRCRAFT };
/** Size and bytes of the log, then a look at what stands under the report.s name. */
const CALLS_BEFORE_WRITING = 3;
const MINE = "<!doctype html>\n<p>my own page</p>";

describe("check --report", () => {
  it("writes beside the log and says where", async () => {
    const ran = await runInMemory(["check", "flight.csv", "--report"], { files });
    expect(ran.exit).toBe(EXIT.done);
    expect(ran.out).toContain("Report: flight.html\n");
    expect(ran.files["flight.html"]).toMatch(/^<!doctype html>/i);
    expect(Object.keys(ran.files).sort()).toEqual([...Object.keys(files), "flight.html"].sort());
  });

  it("does not take the next word as its value", async () => {
    const ran = await runInMemory(["check", "--report", "flight.csv"], { files });
    expect(ran.exit).toBe(EXIT.done);
    expect(ran.files["flight.html"]).toBeDefined();
  });

  it("writes where = says, for one log a file and for several a folder", async () => {
    const one = await runInMemory(["check", "flight.csv", "--report=out/a.html"], { files });
    expect(one.files["out/a.html"]).toBeDefined();
    const two = await runInMemory(["check", "flight.csv", "other.csv", "--report=out"], { files });
    expect(two.files["out/flight.html"]).toBeDefined();
    expect(two.files["out/other.html"]).toBeDefined();
  });

  it("keeps standard output to the JSON and tells of the report beside it", async () => {
    const ran = await runInMemory(["check", "flight.csv", "--report", "--json"], { files });
    expect(JSON.parse(ran.out)).toHaveProperty("format", "tallywatt/flight-check");
    expect(ran.err).toBe("Report: flight.html\n");
  });

  it("replaces its own report and gives the same bytes", async () => {
    const first = await runInMemory(["check", "flight.csv", "--report"], { files });
    const again = await runInMemory(["check", "flight.csv", "--report"], { files: first.files });
    expect(again.exit).toBe(EXIT.done);
    expect(again.files).toEqual(first.files);
  });

  it("that cannot be written is offered again once, as it was given", async () => {
    const there = { ...files, "flight.html": MINE };
    const words = ["check", "flight.csv", "--aircraft", "heron.json"];
    const next = async (...report: string[]) =>
      /^Next: .* (check .*)$/m.exec((await runInMemory([...words, ...report], { files: there })).out)?.[1];
    const offered = "check flight.csv --aircraft heron.json --report";
    expect(await next("--report")).toBe(offered);
    expect(await next("--report=flight.html")).toBe(`${offered}=flight.html`);
    expect(await next()).toBe(offered);
  });

  it("leaves a file of someone else unless --force, and still gives the result", async () => {
    const there = { ...files, "flight.html": MINE };
    const kept = await runInMemory(["check", "flight.csv", "--report"], { files: there });
    expect(kept.exit).toBe(EXIT.cannotWrite);
    expect(kept.files["flight.html"]).toBe(MINE);
    expect(kept.err).toContain("flight.html exists and was not written by tallywatt");
    expect(kept.err).toContain("--force");
    expect(kept.out).toContain("flight.csv:");
    const forced = await runInMemory(["check", "flight.csv", "--report", "--force"], { files: there });
    expect(forced.exit).toBe(EXIT.done);
    expect(forced.files["flight.html"]).not.toBe(MINE);
  });

  it("never writes over the log itself", async () => {
    const there = { "flight.html": files["flight.csv"] };
    const ran = await runInMemory(["check", "flight.html", "--report"], { files: there });
    expect(ran.exit).toBe(EXIT.cannotWrite);
    expect(ran.files).toEqual(there);
  });

  it("writes nothing for a log that cannot be used", async () => {
    const ran = await runInMemory(["check", "empty.csv", "--report"], { files: { "empty.csv": "" } });
    expect(ran.exit).toBe(EXIT.unusable);
    expect(Object.keys(ran.files)).toEqual(["empty.csv"]);
  });

  it("says that the disk is full, gives the result, and leaves no file", async () => {
    for (const code of ["ENOSPC", "SHORT"] as const) {
      const fault = { atCall: CALLS_BEFORE_WRITING, code, isForEver: true };
      const ran = await runInMemory(["check", "flight.csv", "--report"], { files, fault });
      expect(ran.exit).toBe(EXIT.cannotWrite);
      expect(ran.err).toContain("flight.html cannot be written");
      expect(ran.out).toContain("flight.csv:");
      expect(ran.files["flight.html"]).toBeUndefined();
    }
  });
});

describe("writeReport", () => {
  const OLD = "<!doctype html><p>old";
  const NEW = "<!doctype html><p>new and longer";

  function written(html: string, before: MemoryDisk): Readonly<Record<string, string>> {
    writeReport(ioOn(before), "/field/a.html", html, false);
    return textsOf(before);
  }

  it("leaves the old report or the new one, whole, whichever file call fails", () => {
    const old = written(OLD, new MemoryDisk());
    const fresh = written(NEW, new MemoryDisk());
    let failures = 0;
    for (let atCall = 0; atCall < 15; atCall += 1) {
      for (const code of ["ENOSPC", "EIO", "EACCES", "SHORT"] as const) {
        const bytes = new TextEncoder().encode(old["/field/a.html"]);
        const disk = new MemoryDisk(new Map([["/field/a.html", bytes]]), {
          atCall,
          code,
          isForEver: code !== "SHORT",
        });
        try {
          writeReport(ioOn(disk), "/field/a.html", NEW, false);
        } catch (error) {
          failures += 1;
          expect((error as Failure).exit).toBe(EXIT.cannotWrite);
        }
        expect([old["/field/a.html"], fresh["/field/a.html"]]).toContain(textsOf(disk)["/field/a.html"]);
      }
    }
    expect(failures).toBeGreaterThan(10);
  });
});

describe("new", () => {
  it("writes a starter that reads unedited, its schema beside it", async () => {
    const ran = await runInMemory(["new", "heron.json"]);
    expect(ran.exit).toBe(EXIT.done);
    expect(Object.keys(ran.files).sort()).toEqual(["aircraft.schema.json", "heron.json"]);
    const parsed = parseAircraftFile(ran.files["heron.json"] ?? "", "heron.json");
    expect(parsed.state === "read" && parsed.facts.name).toBe("heron");
    expect(ran.out).toContain("Next: tallywatt check flight.csv --aircraft heron.json");
  });

  it("leaves a file that is there, even one of ours, unless --force", async () => {
    const edited = SAMPLE_AIRCRAFT;
    const kept = await runInMemory(["new", "heron.json"], { files: { "heron.json": edited } });
    expect(kept.exit).toBe(EXIT.cannotWrite);
    expect(kept.files).toEqual({ "heron.json": edited });
    const forced = await runInMemory(["new", "heron.json", "--force"], { files: { "heron.json": edited } });
    expect(forced.exit).toBe(EXIT.done);
    expect(forced.files["heron.json"]).not.toBe(edited);
  });

  it("renews its own schema and leaves another's", async () => {
    const first = await runInMemory(["new", "one.json"]);
    const second = await runInMemory(["new", "two.json"], { files: first.files });
    expect(second.exit).toBe(EXIT.done);
    expect(second.err).toBe("");
    const foreign = await runInMemory(["new", "one.json"], { files: { "aircraft.schema.json": "{}" } });
    expect(foreign.exit).toBe(EXIT.done);
    expect(foreign.files["aircraft.schema.json"]).toBe("{}");
    expect(foreign.err).toContain("--force");
  });

  it("says why it cannot write", async () => {
    const ran = await runInMemory(["new", "a.json"], {
      fault: { atCall: 0, code: "ENOSPC", isForEver: true },
    });
    expect(ran.exit).toBe(EXIT.cannotWrite);
    expect(ran.err).toContain("the disk is full");
  });
});

describe("demo", () => {
  it("writes a report for each log of the season and says where", async () => {
    const ran = await runInMemory(["demo"]);
    expect(ran.err).toBe("");
    expect(ran.exit).toBe(EXIT.done);
    const reports = Object.keys(ran.files);
    expect(reports.length).toBeGreaterThanOrEqual(14);
    expect(reports.every((path) => /^demo-reports\/[\w-]+\.html$/.test(path))).toBe(true);
    expect(ran.out).toContain(`${reports.length} reports are in demo-reports`);
    expect(ran.out.startsWith("season.html: the season of 15 flights and bench runs")).toBe(true);
    const front = ran.files["demo-reports/season.html"] ?? "";
    const links = [...front.matchAll(/href="([^"#]*)(#f\d)"/g)];
    expect(links).toHaveLength(15);
    for (const [, page = "", part = ""] of links) {
      expect(ran.files[`demo-reports/${page}`]).toContain(`id="${part.slice(1)}"`);
    }
    const next = /^Next: (?:npx )?tallywatt (.*)$/m.exec(ran.out)?.[1]?.split(" ") ?? [];
    const line = /^flight-09\.html: (.*?\.)(?: \(\d+ notes?\))?$/m.exec(ran.out)?.[1];
    expect(next).toContain("--ambient");
    const here = next.map((word) => (word.includes("/") ? basename(word) : word));
    const season = ["flight-09.csv", "aircraft.json"].map((name) => [
      name,
      readFileSync(join(PACKAGE_FOLDER, "fixtures", "tern", name)),
    ]);
    const again = await runInMemory(here, { files: Object.fromEntries(season) });
    expect(again.out.split("\n")).toContain(line);
  });
});

describe("the reason of a file that cannot be written", () => {
  it("is in words where a file stands in the place of a folder", () => {
    for (const code of ["ENOTDIR", "EEXIST"]) {
      const error = Object.assign(new Error(`${code}: mkdir '/somewhere'`), { code });
      expect(reasonOf(error)).toBe("a part of its path is not a folder");
    }
  });
});
