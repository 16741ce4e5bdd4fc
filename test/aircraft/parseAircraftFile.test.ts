import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NO_BUDGET } from "../../src/aircraft/budget.ts";
import { NO_FACTS } from "../../src/aircraft/facts.ts";
import { DEFAULTS, FULL_CELL_V, parseAircraftFile, starterAircraftFile } from "../../src/aircraft/index.ts";
import { NUMBER_KEYS, type NumberKey, rangeText } from "../../src/aircraft/keys.ts";
import { allKeyPaths } from "../../src/aircraft/schemaWalk.ts";
import { aircraftSentences, JSON_PROBLEMS } from "../../src/aircraft/sentences.ts";
import { rightShare } from "../support/typos.ts";

const FILE = "heron.json";
const SMALLEST = '{ "name": "Heron", "pack": { "cells": 8 } }';

function read(text: string) {
  const parsed = parseAircraftFile(text, FILE);
  if (parsed.state !== "read") throw new Error(parsed.notices.map((notice) => notice.text).join("\n"));
  return parsed;
}

function refusal(text: string): readonly string[] {
  const parsed = parseAircraftFile(text, FILE);
  if (parsed.state === "read") throw new Error("the file was read");
  for (const notice of parsed.notices) expect(notice.severity).toBe("refusal");
  return parsed.notices.map((notice) => notice.text);
}

/** A file with one more key: ("motor.kv", 230) adds { "motor": { "kv": 230 } }. */
function withKey(path: string, value: unknown): string {
  const file: Record<string, unknown> = { name: "Heron", pack: { cells: 8 } };
  const [part = "", key] = path.split(".");
  if (key === undefined) file[part] = value;
  else file[part] = { ...(file[part] as object | undefined), [key]: value };
  return JSON.stringify(file);
}

describe("an aircraft file that is read", () => {
  it("needs only a name and the cells; the rest are the stated defaults or null", () => {
    const { facts, budget, cells, readings } = read(SMALLEST);
    expect(cells).toBe(8);
    expect(facts).toEqual({ ...NO_FACTS, name: "Heron", pack: { ...NO_FACTS.pack, cells: 8 } });
    expect(budget).toEqual(NO_BUDGET);
    expect(readings).toEqual([]);
  });

  it("takes every number of the table at both ends of its range and as its example", () => {
    for (const [path, key] of Object.entries<NumberKey>(NUMBER_KEYS)) {
      if (path.startsWith("readings.")) continue;
      for (const value of [key.low, key.high, key.example]) read(withKey(path, value));
    }
  });

  it("hands each number on to the fact of the same name", () => {
    for (const [path, key] of Object.entries<NumberKey>(NUMBER_KEYS)) {
      if (path.startsWith("readings.")) continue;
      const { facts, budget } = read(withKey(path, key.example));
      const found = path
        .split(".")
        .reduce<unknown>((part, step) => (part as never)[step], { ...facts, ...budget });
      expect(found, path).toBe(key.example);
    }
  });

  it("reads comments, trailing commas, a byte order mark and any line ends", () => {
    const text = `\uFEFF// mine\r\n{ "name": "Heron", /* eight */ "pack": { "cells": 8, }, }\r\n`;
    expect(read(text).facts.pack.cells).toBe(8);
  });

  it("takes the full cell from the chemistry unless it is given", () => {
    for (const chemistry of ["lipo", "lihv", "liion", "life"] as const) {
      const text = JSON.stringify({ name: "Heron", pack: { cells: 8, chemistry } });
      expect(read(text).facts.pack.fullCellV).toBe(FULL_CELL_V[chemistry]);
    }
    expect(
      read('{"name":"H","pack":{"cells":8,"chemistry":"lihv","fullCellV":4.3}}').facts.pack.fullCellV,
    ).toBe(4.3);
  });

  it("keeps remembered readings", () => {
    const reading = { headerSignature: "5c0d", columns: { packVoltage: "U [V]" }, units: { current: "mA" } };
    const text = JSON.stringify({ name: "H", pack: { cells: 8 }, readings: [reading] });
    expect(read(text).readings).toEqual([{ ...reading, rateHz: null, decimalMark: null, dateOrder: null }]);
  });

  it("knows the line of each key given, and so what was left to a default", () => {
    const { givenInLine } = read('{\n  "name": "H",\n  "pack": {\n    "cells": 8\n  }\n}');
    expect(givenInLine.get("pack.cells")).toBe(4);
    expect(givenInLine.has("reservePct")).toBe(false);
    for (const path of Object.keys(DEFAULTS)) expect(allKeyPaths()).toContain(path);
  });

  it("reads the starter unedited, under any name", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60 }), (name) => {
        expect(read(starterAircraftFile(name)).facts.name).toBe(name);
      }),
      { seed: 20260614, numRuns: 100 },
    );
  });
});

describe("an aircraft file that is refused", () => {
  it("names the key, the line, the value, the range and an example", () => {
    const text = '{\n  "name": "H",\n  "pack": { "cells": 8 },\n  "motor": {\n    "kv": 230000 } }';
    const sentence = aircraftSentences.wrongValue(
      `${FILE} line 5`,
      "motor.kv",
      "230000",
      rangeText(NUMBER_KEYS["motor.kv"]),
      '"kv": 230',
    );
    expect(refusal(text)).toEqual([sentence]);
    expect(sentence).toContain("5 to 20000 rev/min per volt");
  });

  it("refuses every number just outside its range, as text, as null and not whole", () => {
    for (const [path, key] of Object.entries<NumberKey>(NUMBER_KEYS)) {
      if (path.startsWith("readings.")) continue;
      const step = key.isWhole ? 1 : 0.001;
      for (const value of [key.low - step, key.high + step]) {
        const [text = ""] = refusal(withKey(path, value));
        expect(text).toContain(path);
        expect(text).toContain(`from ${key.low} to ${key.high}`);
      }
      expect(refusal(withKey(path, String(key.example)))[0]).toContain("without quotes");
      expect(refusal(withKey(path, null))[0]).toContain(path);
      if (key.isWhole) expect(refusal(withKey(path, key.low + 0.5))[0]).toContain("a whole number");
    }
  });

  it.each([
    [
      "a key of another part",
      '{"name":"H","capacityMah":1,"pack":{"cells":8}}',
      "Did you mean pack.capacityMah?",
    ],
    ["a slip", '{"name":"H","pack":{"cels":8}}', "Did you mean pack.cells?"],
    [
      "a slip in a reading",
      '{"name":"H","pack":{"cells":8},"readings":[{"headerSignature":"a","columns":{"curent":"I"}}]}',
      "readings[0].columns.current?",
    ],
    ["nothing like a key", '{"name":"H","pack":{"cells":8,"qqqqqqqqq":1}}', "Keys allowed here: cells,"],
    ["a hostile key", '{"name":"H","pack":{"cells":8},"__proto__":{"polluted":1}}', "__proto__ is not a key"],
    ["a key given twice", '{"name":"H",\n"name":"G","pack":{"cells":8}}', "first in line 1"],
    ["a missing part", '{"name":"H"}', '"pack": { "cells": 8 }'],
    ["a missing cell count", '{"name":"H","pack":{}}', "pack.cells is missing"],
    ["a part that is no part", '{"name":"H","pack":8}', "a part in { }"],
    [
      "a chemistry not known",
      '{"name":"H","pack":{"cells":8,"chemistry":"lead"}}',
      "lipo, lihv, liion, life",
    ],
    ["a decimal comma", '{"name":"H","pack":{"cells":8,"minLoadedCellV":3,5}}', "write a point, as in 3.5"],
    ["an empty name", '{"name":"","pack":{"cells":8}}', "text of 1 to 200 characters"],
    ["readings that are no list", '{"name":"H","pack":{"cells":8},"readings":{}}', "a list in [ ]"],
    ["no object", "[1, 2]", "tallywatt new FILE"],
    ["nothing", "", "tallywatt new FILE"],
    ["a log", "time,volts\n1,2\n", "tallywatt new FILE"],
    ["a log with a preamble", "# Recording\n1,2\n", "tallywatt new FILE"],
  ])("says what to do about %s", (_what, text, expected) => {
    expect(refusal(text).join("\n")).toContain(expected);
  });

  it("lists every wrong value at once, in the order of the file", () => {
    const text = '{"name":"H",\n"pack":{"cells":80},\n"motor":{"kv":1},\n"reservePct":95}';
    expect(refusal(text).map((sentence) => /line (\d+)/.exec(sentence)?.[1])).toEqual(["2", "3", "4"]);
  });

  it("holds the burst against the continuous rating", () => {
    const text = '{"name":"H","pack":{"cells":8},\n"controller":{"continuousA":100,"burstA":80}}';
    expect(refusal(text)).toEqual([aircraftSentences.burstBelowContinuous(`${FILE} line 2`, 80, 100)]);
  });

  it("holds the loaded cell against the chemistry's full cell", () => {
    const text = '{"name":"H","pack":{"cells":8,"chemistry":"life","minLoadedCellV":3.7}}';
    expect(refusal(text)).toEqual([aircraftSentences.loadedAboveFull(`${FILE} line 1`, 3.7, 3.6)]);
  });

  it.each([
    ['{\n"name": "H"\n"pack": {"cells": 8}}', "CommaExpected", 3],
    ['{"name": "H", "pack": {"cells": 8}', "CloseBraceExpected", 1],
    ['{"name": Heron, "pack": {"cells": 8}}', "InvalidSymbol", 1],
    ['{"name": "H", "pack": {"cells": 8}} {}', "EndOfFileExpected", 1],
    ['{"name": "H", "pack": {"cells": }}', "ValueExpected", 1],
    ['{name: "H", "pack": {"cells": 8}}', "InvalidSymbol", 1],
  ])("says in words what is wrong with %j", (text, code, line) => {
    expect(refusal(text)).toEqual([
      aircraftSentences.notJson(`${FILE} line ${line}`, JSON_PROBLEMS[code] ?? ""),
    ]);
  });

  it("stops at text that is too long or nested without end", () => {
    const tooLarge = [aircraftSentences.tooLarge(FILE, 1_000_000)];
    expect(refusal("[".repeat(50_000))).toEqual(tooLarge);
    expect(refusal(" ".repeat(1_000_001))).toEqual(tooLarge);
  });

  it("never throws and never says undefined, NaN or [object, whatever the text", () => {
    const text = fc.oneof(
      fc.string({ maxLength: 200 }),
      fc.json(),
      fc.jsonValue().map((value) => withKey("motor", value)),
    );
    fc.assert(
      fc.property(text, (given) => {
        const parsed = parseAircraftFile(given, FILE);
        const said = parsed.state === "read" ? "" : parsed.notices.map((notice) => notice.text).join("\n");
        expect(said.replaceAll(given, "")).not.toMatch(/undefined|NaN|\[object/);
      }),
      { seed: 20260615, numRuns: 500 },
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("suggests the right key first for at least 90 % of single slips", () => {
    const paths = allKeyPaths().filter((path) => path !== "$schema");
    const { share, wrong, count } = rightShare(paths, (typo, path) => {
      const within = path.includes(".") ? path.split(".")[0] : null;
      if (within !== null && !typo.startsWith(`${within}.`)) return path;
      if (within === null && typo.includes(".")) return path;
      return (
        /Did you mean (.*)\?/.exec(
          refusal(withKey(typo, 1)).find((text) => text.includes("Did you mean")) ?? "",
        )?.[1] ?? null
      );
    });
    expect(count).toBeGreaterThan(1000);
    expect(share, wrong.join("; ")).toBeGreaterThanOrEqual(0.9);
  });
});
