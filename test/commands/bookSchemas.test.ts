import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { beforeAll, describe, expect, it } from "vitest";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { BookMachine, flightLog } from "./bookMachine.ts";
import { PACKAGE_FOLDER } from "./inMemory.ts";

function schemaOf(name: string) {
  const text = readFileSync(resolve(PACKAGE_FOLDER, "schemas", `${name}.schema.json`), "utf8");
  return new Ajv({ strict: true }).compile(JSON.parse(text) as object);
}

describe("the logbook's JSON", () => {
  const machine = new BookMachine({
    "one.csv": flightLog({ startsAt: "2026-06-14 10:00:00" }),
    "two.csv": flightLog({ currentA: 27, startsAt: "2026-06-15 10:00:00" }),
    "empty.csv": "",
  });
  beforeAll(async () => {
    await machine.ok("add one.csv --aircraft heron.json --pack A --put-back 760");
  });

  it.each([
    ["add", "add two.csv empty.csv --put-back 800", 3],
    ["add", "add two.csv --dry-run", 0],
    ["list", "list", 0],
    ["flight", "show 2026-06-14-1", 0],
    ["change", "edit 2026-06-14-1 --pack B", 0],
    ["change", "remove 2026-06-14-1 --dry-run", 0],
    ["change", "undo --dry-run", 0],
    ["recheck", "recheck --refit", 0],
    ["verify", "verify", 0],
    ["export", "export all.csv", 0],
    ["timer", "timer", 0],
  ])("fits schemas/%s.schema.json: %s", async (name, words, exit) => {
    const ran = await machine.run(`${words} --json`);
    expect(ran.exit, ran.err).toBe(exit);
    const isValid = schemaOf(name);
    expect(isValid(JSON.parse(ran.out)) ? [] : isValid.errors).toEqual([]);
    expect(ran.out).not.toMatch(/NaN|Infinity/);
  });

  it("prints what a pilot wrote without a control character, and keeps it as it was", async () => {
    const note = `${ATTACK_STRINGS.slice(-2).join("")}\u001B[2Jx`.replaceAll("\u0000", "");
    await machine.ok(["edit", "2026-06-14-1", "--note", note]);
    const shown = await machine.ok("show 2026-06-14-1");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the purpose
    expect(shown).not.toMatch(/[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/);
    const { given } = await machine.json<{ given: { note: string } }>("show 2026-06-14-1");
    expect(given.note).toBe(note);
  });
});
