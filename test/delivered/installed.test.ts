import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { ensureBuilt } from "../support/built.ts";
import { CONSUMER, compile, packInto, run } from "./packed.ts";

/**
 * The package as its archive is installed: npm puts it and the packages it names into an empty folder. npm takes them
 * from its cache, else from the registry it is set up with; where it finds neither, these tests are left out, except
 * in CI.
 */
const folder = mkdtempSync(join(tmpdir(), "tallywatt-installed-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** npm's own settings, but not the place of the npm that runs these tests. */
const ENV: NodeJS.ProcessEnv = {
  ...Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^npm_(?!config_(registry|cache|userconfig|offline)$)/.test(name),
    ),
  ),
  NO_COLOR: "1",
};

function whyNotInstalled(): string | null {
  ensureBuilt();
  writeFileSync(join(folder, "package.json"), '{ "type": "module", "private": true }');
  const archive = packInto(folder, ENV);
  const words = ["install", "--prefer-offline", "--no-audit", "--no-fund", "--fetch-retries", "1", archive];
  const { status, err } = run("npm", words, folder, ENV);
  return status === 0 ? null : err;
}

const why = whyNotInstalled();
if (why !== null && process.env.CI === "true") throw new Error(`npm install of the archive failed: ${why}`);
if (why !== null) console.log(`left out: npm could not install the archive here: ${why.split("\n")[0]}`);

const command = join(folder, "node_modules/.bin/tallywatt");
const installed = join(folder, "node_modules/tallywatt");
const log = join(installed, "fixtures/tern/flight-01.csv");
const aircraft = join(installed, "fixtures/tern/aircraft.json");

/** The output of a call that ended well. */
function tallywatt(...words: readonly string[]): string {
  const ran = run(command, words, folder, ENV);
  expect(ran.status, ran.err).toBe(0);
  return ran.out;
}

describe.skipIf(why !== null)("the package that npm installed", () => {
  it("checks a log, adds two and sets a timer", () => {
    const checked = JSON.parse(tallywatt("check", log, "--aircraft", aircraft, "--json"));
    expect(checked).toMatchObject({ format: "tallywatt/flight-check", aircraft: "Tern" });
    const second = log.replace("01", "02");
    tallywatt("add", log, second, "--book", "book", "--aircraft", aircraft);
    expect(JSON.parse(tallywatt("list", "--book", "book", "--json")).flights).toHaveLength(2);
    const timer = JSON.parse(tallywatt("timer", "--book", "book", "--json"));
    expect(timer).toMatchObject({ format: "tallywatt/timer", aircraft: "Tern", flights: 2 });
  });

  it("serves the page with the book to who knows the token, and to no one else", async () => {
    const served = spawn(command, ["page", "--book", "book"], { cwd: folder, env: ENV });
    const ended = new Promise<number | null>((resolve) => served.once("exit", resolve));
    try {
      const address = await new Promise<string>((resolve, reject) => {
        served.stdout.once("data", (line: Buffer) => resolve(line.toString().trim()));
        served.once("exit", () => reject(new Error("the server ended before it told its address")));
      });
      const { origin, hash } = new URL(address);
      expect(await (await fetch(origin)).text()).toMatch(/^<!doctype html>/i);
      const asked = await fetch(`${origin}/book`, { headers: { authorization: `Bearer ${hash.slice(1)}` } });
      expect(Object.keys(((await asked.json()) as { files: object }).files)).toContain("book.json");
      expect((await fetch(`${origin}/book`)).status).toBe(401);
    } finally {
      served.kill("SIGINT");
    }
    expect(await ended).toBe(130);
  });

  it("saves the page as one file", () => {
    tallywatt("page", "--save", "page.html");
    expect(readFileSync(join(folder, "page.html"), "utf8")).toContain("default-src 'none'");
  });

  it("is imported with its types, strictly, beside the packages that npm chose", () => {
    writeFileSync(join(folder, "consumer.ts"), CONSUMER);
    expect(compile("consumer.ts", folder, ENV)).toBe("");
    const ran = run(process.execPath, ["consumer.js", log], folder, ENV);
    expect(ran.status, ran.err).toBe(0);
    const { flights } = JSON.parse(tallywatt("check", log, "--json"));
    expect(JSON.parse(ran.out)).toEqual(flights[0].measures.chargeUsedMah);
  });
});
