import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { runCommandLine } from "../../src/apps/commands/run.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { nodeIo } from "../support/nodeIo.ts";

const LOG = flightLog({ startsAt: "2026-06-14 10:00:00" });

describe("names that a log, an aircraft or a pack brings along", () => {
  it.each([
    "../../outside",
    "..\\..\\outside",
    "/etc/outside",
    "CON",
    "nul",
    "__proto__",
    "constructor",
    ".hidden",
    "name. ",
    "%2e%2e%2foutside",
  ])("%j stays inside the book, under a name that any system can hold", async (name) => {
    const machine = new BookMachine({
      "log.csv": LOG.replace("time,", `${name},time,`).replaceAll(/\n(?=\d)/g, "\nx,"),
      "aircraft.json": JSON.stringify({ name, pack: { cells: 8, capacityMah: 5000 } }),
    });
    const before = Object.keys(machine.files);
    await machine.ok(["add", "log.csv", "--aircraft", "aircraft.json", "--pack", name, "--note", name]);
    await machine.ok(["add", "log.csv", "--aircraft", "aircraft.json"]);
    const made = Object.keys(machine.files).filter((path) => !before.includes(path));
    for (const path of made) {
      expect(path).toMatch(/^book\/(?:[a-z]+\/)?[A-Za-z0-9_][A-Za-z0-9._-]*[A-Za-z0-9]$/);
      expect(path).not.toMatch(/\.\.|(?:^|\/)(?:con|nul|lpt\d)(?:\.|$)/i);
    }
    const { flights } = await machine.json<{ flights: readonly { aircraft: string }[] }>("list");
    expect(flights.map(({ aircraft }) => aircraft)).toEqual([name]);
    expect(({} as Record<string, unknown>).outside).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe("links under the names that are written", () => {
  let folder: string;
  const at = (name: string): string => join(folder, name);

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "tallywatt-links-"));
    mkdirSync(at("field"));
    mkdirSync(at("outside"));
    writeFileSync(at("field/log.csv"), LOG);
    writeFileSync(at("outside/precious.html"), "precious");
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  async function run(...words: string[]) {
    const { io, out, err } = nodeIo(at("field"));
    return { exit: await runCommandLine(words, io), said: [...err, ...out].join("") };
  }

  const precious = (): string => readFileSync(at("outside/precious.html"), "utf8");

  it("keep what a report's name leads to", async () => {
    symlinkSync(at("outside/precious.html"), at("field/report.html"));
    const ran = await run("check", "log.csv", "--report=report.html");
    expect(ran.exit, ran.said).toBe(EXIT.cannotWrite);
    expect(precious()).toBe("precious");
  });

  it("are replaced, not followed, where it is forced", async () => {
    symlinkSync(at("outside/precious.html"), at("field/report.html"));
    const ran = await run("check", "log.csv", "--report=report.html", "--force");
    expect(ran.exit, ran.said).toBe(EXIT.done);
    expect(precious()).toBe("precious");
    expect(lstatSync(at("field/report.html")).isSymbolicLink()).toBe(false);
  });

  it("are not followed under the name of the file that is being written", async () => {
    symlinkSync(at("outside/precious.html"), at("field/report.html.writing"));
    const ran = await run("check", "log.csv", "--report=report.html");
    expect(ran.exit, ran.said).toBe(EXIT.done);
    expect(precious()).toBe("precious");
    expect(readdirSync(at("field")).sort()).toEqual(["log.csv", "report.html"]);
  });

  it("of a book's folder lead nothing out of it", async () => {
    mkdirSync(at("field/book"));
    for (const name of ["logs", "flights"]) symlinkSync(at("outside"), at(`field/book/${name}`));
    const ran = await run("add", "log.csv", "--book", "book");
    expect(ran.exit, ran.said).not.toBe(EXIT.done);
    expect(ran.exit, ran.said).not.toBe(EXIT.bug);
    expect(readdirSync(at("outside"))).toEqual(["precious.html"]);
  });

  it("to a folder of reports are the pilot's own: reports go there", async () => {
    symlinkSync(at("outside"), at("field/reports"));
    const ran = await run("check", "log.csv", `--report=${resolve(at("field"), "reports/one.html")}`);
    expect(ran.exit, ran.said).toBe(EXIT.done);
    expect(readdirSync(at("outside")).sort()).toEqual(["one.html", "precious.html"]);
  });
});
