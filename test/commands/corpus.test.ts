import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/apps/commands/exitCodes.ts";
import type { MeasureName } from "../../src/flight/analysis/index.ts";
import type { FlightCheck } from "../../src/flight/check/index.ts";
import { sharedFolder, withShared } from "../support/shared.ts";
import { PACKAGE_FOLDER, runInMemory } from "./inMemory.ts";

interface Expected {
  readonly energy_wh: number;
  readonly charge_mah: number;
}
interface Case {
  readonly file: string;
  readonly verdict: "ok" | "note" | "warn" | "ask" | "reject";
  readonly expect: Expected | null;
  readonly tol: number;
  readonly must_report: readonly string[];
}
interface Manifest {
  readonly truth: Expected;
  readonly cases: readonly Case[];
}

const EXITS = { ok: EXIT.done, note: EXIT.done, warn: EXIT.done, ask: EXIT.choice, reject: EXIT.unusable };

/** The answers that settle a question; the sums are then those of the clean log. */
const SETTLED = [
  ["b14_unquoted_decimal_comma_in_comma_csv.csv", ["--decimal", "comma", "--delimiter", "comma"]],
  ["d17_frozen_clock.csv", ["--rate", "5"]],
  ["d19_no_time_column.csv", ["--rate", "5"]],
] as const;

const shared = sharedFolder();
const corpus = shared === null ? null : resolve(shared, "corpus");
const manifest: Manifest = corpus
  ? (JSON.parse(readFileSync(resolve(corpus, "manifest.json"), "utf8")) as Manifest)
  : { truth: { energy_wh: 0, charge_mah: 0 }, cases: [] };

const schema = JSON.parse(
  readFileSync(resolve(PACKAGE_FOLDER, "schemas/flight-check.schema.json"), "utf8"),
) as object;
const isCheck = new Ajv({ strict: true }).compile(schema);

async function ranOn(file: string, words: readonly string[] = []) {
  const folder = corpus ?? "";
  const files = {
    [file]: readFileSync(resolve(folder, file)),
    "aircraft.json": readFileSync(resolve(folder, "aircraft.json")),
  };
  return await runInMemory(["check", file, "--aircraft", "aircraft.json", ...words], { files });
}

function covered(check: FlightCheck, name: MeasureName): number {
  return check.flights.reduce((sum, { measures }) => sum + (measures[name].value ?? Number.NaN), 0);
}

function expectSums(check: FlightCheck, expected: Expected, tolerance: number): void {
  const pairs = [
    ["energyCoveredWh", expected.energy_wh],
    ["chargeCoveredMah", expected.charge_mah],
  ] as const;
  for (const [name, value] of pairs) {
    const got = covered(check, name);
    expect(Math.abs(got - value) / value, `${name}: got ${got}, expected ${value}`).toBeLessThanOrEqual(
      tolerance,
    );
  }
}

describe.skipIf(corpus === null)(withShared("check on logs with one defect each"), () => {
  it.each(manifest.cases)(
    "$file: $verdict",
    async ({ file, verdict, expect: expected, tol, must_report }) => {
      const text = await ranOn(file);
      const json = await ranOn(file, ["--json"]);
      expect(text.exit).toBe(EXITS[verdict]);
      expect(json.exit).toBe(EXITS[verdict]);
      expect(json.err.replaceAll(" --json", "")).toBe(text.err);

      const check = JSON.parse(json.out) as FlightCheck;
      expect(isCheck(check), JSON.stringify(isCheck.errors)).toBe(true);
      if (expected) expectSums(check, expected, tol);

      const notices = check.log.notices
        .map((notice) => notice.text)
        .join("\n")
        .toLowerCase();
      for (const word of must_report) {
        expect(notices).toContain(word.toLowerCase());
        expect(text.err.toLowerCase()).toContain(word.toLowerCase());
      }
      expectGoodMessages(file, text.err, verdict);
      expect(text.out.trimEnd().split("\n").length).toBeLessThanOrEqual(8);
      if (verdict === "ok")
        expect(check.log.notices.filter(({ severity }) => severity === "warning")).toEqual([]);
    },
  );

  it.each(SETTLED)("%s is settled by %j", async (file, words) => {
    const ran = await ranOn(file, [...words, "--json"]);
    expect(ran.exit).toBe(EXIT.done);
    expectSums(JSON.parse(ran.out) as FlightCheck, manifest.truth, 1e-6);
  });
});

const RECORDINGS = ["1", "5", "108", "204", "215", "250", "278", "279"];

describe.skipIf(shared === null)(withShared("check on real recordings"), () => {
  it.each(RECORDINGS)("%s.csv needs no option and gives valid JSON", async (name) => {
    const bytes = readFileSync(resolve(shared ?? "", "flights", `${name}.csv`));
    const ran = await runInMemory(["check", "a.csv", "--json"], { files: { "a.csv": bytes } });
    expect(ran.exit, ran.err).toBe(EXIT.done);
    expect(isCheck(JSON.parse(ran.out)), JSON.stringify(isCheck.errors)).toBe(true);
  });
});

/** Names the log, at most five lines each, no trace of the program's inside, a next step where it stopped. */
function expectGoodMessages(file: string, err: string, verdict: Case["verdict"]): void {
  const withoutQuotes = err.replace(/"[^"\n]*"/g, "");
  expect(withoutQuotes).not.toMatch(/undefined|NaN|\[object|Error:|\n\s+at /);
  const messages = err.split(/^(?=\S)/m).filter((message) => message !== "");
  for (const message of messages) {
    expect(message.startsWith(`${file}: `), message).toBe(true);
    expect(message.trimEnd().split("\n").length).toBeLessThanOrEqual(5);
    const longest = Math.max(...message.split("\n").map((line) => line.length));
    expect(longest, message).toBeLessThanOrEqual(400);
  }
  if (verdict === "ask") expect(err).toMatch(/\n {4}try: tallywatt check .* --/);
  if (verdict === "warn") expect(messages.length).toBeGreaterThan(0);
}
