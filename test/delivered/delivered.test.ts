import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hasBrowser, openBrowser } from "../browser/browser.ts";
import { openPage } from "../browser/pageCore.ts";
import { readLogs } from "../browser/pageDesk.ts";
import { ensureBuilt } from "../support/built.ts";
import { CONSUMER, compile, packInto, ROOT, run } from "./packed.ts";

/**
 * The package as a user gets it: packed, put into an empty folder outside the repository, run from there. No registry
 * is asked: the command needs no other package, and those that the library names are linked from this checkout.
 */
const folder = mkdtempSync(join(tmpdir(), "tallywatt-delivered-"));
const installed = join(folder, "node_modules", "tallywatt");
const log = join(installed, "fixtures/tern/flight-01.csv");
const aircraft = join(installed, "fixtures/tern/aircraft.json");

const ENV = { PATH: process.env.PATH, HOME: folder, NO_COLOR: "1" };
const tallywatt = (...words: string[]) =>
  run(join(folder, "node_modules/.bin/tallywatt"), words, folder, ENV);

function unpack(): void {
  const archive = packInto(folder, ENV);
  mkdirSync(installed, { recursive: true });
  const words = ["-xzf", archive, "-C", installed, "--strip-components=1"];
  const unpacked = run("tar", words, folder, ENV);
  if (unpacked.status !== 0) throw new Error(unpacked.err);
  mkdirSync(join(folder, "node_modules/.bin"));
  const { bin } = packageFile();
  symlinkSync(join(installed, bin.tallywatt), join(folder, "node_modules/.bin/tallywatt"));
}

function packageFile() {
  return JSON.parse(readFileSync(join(installed, "package.json"), "utf8")) as {
    readonly bin: { readonly tallywatt: string };
    readonly dependencies: Readonly<Record<string, string>>;
    readonly exports: Readonly<Record<string, string | { readonly types: string; readonly default: string }>>;
  };
}

beforeAll(() => {
  ensureBuilt();
  unpack();
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the delivered command, with no other package beside it", () => {
  it("checks a log", () => {
    const ran = tallywatt("check", log, "--aircraft", aircraft, "--json");
    expect(ran.status, ran.err).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({ format: "tallywatt/flight-check", aircraft: "Tern" });
  });

  it("keeps a logbook and sets a timer from it", () => {
    const logs = ["flight-01.csv", "flight-02.csv"].map((name) => join(installed, "fixtures/tern", name));
    const added = tallywatt("add", ...logs, "--book", "book", "--aircraft", aircraft);
    expect(added.status, added.err).toBe(0);
    const timer = tallywatt("timer", "--book", "book", "--json");
    expect(timer.status, timer.err).toBe(0);
    expect(JSON.parse(timer.out)).toMatchObject({ format: "tallywatt/timer", aircraft: "Tern" });
  });

  it("writes the report and the starter aircraft file", () => {
    const report = tallywatt("check", log, "--aircraft", aircraft, "--report=report.html");
    expect(report.status, report.err).toBe(0);
    expect(readFileSync(join(folder, "report.html"), "utf8")).toMatch(/^<!doctype html>/i);
    expect(tallywatt("new", "mine.json").status).toBe(0);
    // The starter's numbers are examples: its six cells are not the eight of this log.
    expect(tallywatt("check", log, "--aircraft", "mine.json", "--cells", "8").status).toBe(0);
  });

  it("saves the page, which reads a log by itself", async () => {
    expect(tallywatt("page", "--save", "page.html").status).toBe(0);
    expect(statSync(join(folder, "page.html")).size, "bytes").toBeLessThan(700_000);
    if (!hasBrowser()) return;
    const browser = await openBrowser();
    const context = await browser.newContext({ offline: true });
    const { page, problems } = await openPage(context, pathToFileURL(join(folder, "page.html")).href);
    await readLogs(page, log);
    await page.locator("#report .flight").first().waitFor();
    expect(problems).toEqual([]);
    await browser.close();
  });
});

describe("the delivered library, with the packages it names", () => {
  beforeAll(() => {
    for (const name of Object.keys(packageFile().dependencies)) {
      const link = join(folder, "node_modules", name);
      mkdirSync(dirname(link), { recursive: true });
      symlinkSync(join(ROOT, "node_modules", name), link);
    }
    writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
    writeFileSync(join(folder, "consumer.ts"), CONSUMER);
  });

  it("has every file that its package.json promises", () => {
    const paths = Object.values(packageFile().exports).flatMap((each) =>
      typeof each === "string" ? [each] : [each.types, each.default],
    );
    for (const path of paths) expect(readFileSync(join(installed, path)).length, path).toBeGreaterThan(0);
  });

  it("is imported with its types, strictly, and gives what the command gives", () => {
    expect(compile("consumer.ts", folder, ENV)).toBe("");
    const ran = run(process.execPath, ["consumer.js", log], folder, ENV);
    expect(ran.status, ran.err).toBe(0);
    const json = tallywatt("check", log, "--json").out;
    const checked = JSON.parse(json) as { flights: { measures: { chargeUsedMah: unknown } }[] };
    expect(JSON.parse(ran.out)).toEqual(checked.flights[0]!.measures.chargeUsedMah);
  });
});
