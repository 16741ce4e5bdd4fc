import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import { BookMachine, flightLog } from "./bookMachine.ts";
import { runInMemory } from "./inMemory.ts";

/** A machine whose book holds three flights of the Heron. */
async function machineWithBook(): Promise<BookMachine> {
  const machine = new BookMachine({
    "one.csv": flightLog({ startsAt: "2026-06-14 10:00:00" }),
    "two.csv": flightLog({ startsAt: "2026-06-14 12:00:00", currentA: 26 }),
    "three.csv": flightLog({ startsAt: "2026-06-20 10:00:00", currentA: 22 }),
  });
  for (const log of ["one", "two", "three"]) await machine.ok(`add ${log}.csv --aircraft heron.json`);
  return machine;
}

const textOf = (machine: BookMachine, name: string): string => String(machine.files[name] ?? "");
const hrefs = (html: string): readonly string[] =>
  [...html.matchAll(/href="([^"]*)"/g)].map((match) => match[1] ?? "");

describe("tallywatt season", () => {
  it("writes the page from the book and nothing else", async () => {
    const machine = await machineWithBook();
    const before = Object.keys(machine.files);
    const out = await machine.ok("season --report=season.html");
    expect(out).toBe("Season report of 3 flights: season.html\n");
    expect(Object.keys(machine.files).filter((name) => !before.includes(name))).toEqual(["season.html"]);
    const html = textOf(machine, "season.html");
    expect(html.startsWith("<!doctype html>\n<!-- written by tallywatt -->")).toBe(true);
    expect(html).toContain("3 flights");
    expect(hrefs(html)).toEqual([]);
  });

  it("says the same timer as tallywatt timer", async () => {
    const machine = await machineWithBook();
    const timer = await machine.json<{ timerS: number | null; why?: string }>("timer");
    await machine.ok("season --report=season.html");
    const { timerS, why = "" } = timer;
    const said = timerS === null ? why.slice(1, 40) : `${Math.floor(timerS / 60)}:`;
    expect(textOf(machine, "season.html")).toContain(said);
  });

  it("writes each flight's own report beside it and links every one that it wrote", async () => {
    const machine = await machineWithBook();
    const out = await machine.ok("season --report=reports/all.html --with-flights");
    expect(out).toContain("3 flight reports: reports/all-flights");
    const links = hrefs(textOf(machine, "reports/all.html"));
    expect([...links].sort()).toEqual(
      [...(await machine.flights())].map((flight) => `all-flights/${flight}.html`).sort(),
    );
    for (const link of links) expect(textOf(machine, `reports/${link}`)).toContain("Flight check of");
  });

  it("escapes a folder's name in the links", async () => {
    const machine = await machineWithBook();
    await machine.ok(["season", "--report=my (first) season.html", "--with-flights"]);
    const [link] = hrefs(textOf(machine, "my (first) season.html"));
    expect(link).toMatch(/^my%20%28first%29%20season-flights\/2026-06-20-1\.html$/);
    expect(machine.files[decodeURIComponent(link ?? "")]).toBeDefined();
  });

  it("says which flight has no report of its own when its log is gone", async () => {
    const machine = await machineWithBook();
    const log = Object.keys(machine.files).find((name) => /^book\/logs\/.*one\.csv$/.test(name)) ?? "";
    delete machine.files[log];
    const ran = await machine.run("season --report=season.html --with-flights");
    expect(ran.exit).toBe(EXIT.done);
    expect(ran.err).toContain("2026-06-14-1");
    expect(hrefs(textOf(machine, "season.html"))).toHaveLength(2);
  });

  it("leaves a file of someone else alone, before any flight's report is written", async () => {
    const machine = await machineWithBook();
    machine.files["season.html"] = "mine";
    const ran = await machine.run("season --report=season.html --with-flights");
    expect(ran.exit).toBe(EXIT.cannotWrite);
    expect(textOf(machine, "season.html")).toBe("mine");
    expect(Object.keys(machine.files).some((name) => name.startsWith("season-flights"))).toBe(false);
    await machine.ok("season --report=season.html --force");
    expect(textOf(machine, "season.html")).toContain("Season report");
  });

  it.each([
    ["season", "--report=FILE.html"],
    ["season --report", "--report=FILE.html"],
    ["season --report=out.txt", "must end in .html"],
  ])("%s is a usage error that says how", async (line, said) => {
    const ran = await runInMemory(line.split(" "), { env: { TALLYWATT_BOOK: "book" } });
    expect(ran.exit).toBe(EXIT.usage);
    expect(ran.err).toContain(said);
  });

  it("asks for the aircraft of an empty book and does not know an unknown one", async () => {
    const empty = await runInMemory(["season", "--book", "book", "--report=s.html"]);
    expect(empty.exit).toBe(EXIT.choice);
    const machine = await machineWithBook();
    const unknown = await machine.run("season --aircraft Gull --report=s.html");
    expect(unknown.exit).toBe(EXIT.unusable);
    expect(unknown.err).toContain("Heron");
    expect(machine.files["s.html"]).toBeUndefined();
  });

  it("leaves no half page on a full disk", async () => {
    const machine = await machineWithBook();
    const ran = await runInMemory(["season", "--book", "book", "--report=s.html"], {
      files: machine.files,
      fault: { atCall: 0, code: "ENOSPC", isForEver: true },
    });
    expect(ran.exit).not.toBe(EXIT.done);
    expect(ran.files["s.html"]).toBeUndefined();
  });
});
