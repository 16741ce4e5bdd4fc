import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { jsonSchemas } from "../../scripts/schemas/jsonSchemas.ts";
import { parseAircraftFile, starterAircraftFile } from "../../src/aircraft/index.ts";
import { NUMBER_KEYS, type NumberKey } from "../../src/aircraft/keys.ts";

const FOLDER = resolve(import.meta.dirname, "../../schemas");

interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
}

function committed(name: string): Schema {
  return JSON.parse(readFileSync(resolve(FOLDER, name), "utf8")) as Schema;
}

/** Every key below a schema with its path. */
function keysOf(schema: Schema, path = ""): readonly (readonly [string, Schema])[] {
  const own = Object.entries(schema.properties ?? {}).flatMap(([key, inner]) => [
    [`${path}${key}`, inner] as const,
    ...keysOf(inner, `${path}${key}.`),
  ]);
  return [...own, ...(schema.items ? keysOf(schema.items, `${path}0.`) : [])];
}

describe("the JSON Schemas in schemas/", () => {
  const fresh = jsonSchemas();

  it("are those that the source gives: npm run schemas writes them anew", () => {
    expect(readdirSync(FOLDER).sort()).toEqual([...fresh.keys()].sort());
    for (const [name, schema] of fresh)
      expect(committed(name), name).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  it("are strict JSON Schema", () => {
    for (const name of fresh.keys()) new Ajv({ strict: true }).compile(committed(name));
  });

  it("tell every key of the aircraft file with a description and an example that fits", () => {
    const schema = committed("aircraft.schema.json");
    const keys = keysOf(schema);
    const ajv = new Ajv({ strict: false });
    expect(keys.length).toBeGreaterThan(100);
    for (const [path, key] of keys) {
      expect(key.description, path).toMatch(/\S/);
      expect(key.examples?.length, path).toBeGreaterThan(0);
      const { description: _, ...rule } = key;
      const fits = ajv.compile(rule);
      for (const example of key.examples ?? [])
        expect(fits(example), `${path}: ${JSON.stringify(example)}`).toBe(true);
    }
  });

  it("state unit and range of every number", () => {
    const keys = new Map(keysOf(committed("aircraft.schema.json")));
    for (const [path, { low, high, unit }] of Object.entries<NumberKey>(NUMBER_KEYS)) {
      const key = keys.get(path.replace("readings.", "readings.0."));
      const rule = { ...key, ...key?.anyOf?.[0] };
      expect(rule, path).toMatchObject({ minimum: low, maximum: high });
      expect(key?.description, path).toContain(unit === "1" ? "No unit." : `Unit: ${unit}.`);
    }
  });

  it("agree with the reader about files that are right and wrong", () => {
    const isValid = new Ajv({ strict: true }).compile(committed("aircraft.schema.json"));
    const starter = JSON.parse(starterAircraftFile("Heron").replace(/\/\/.*$/gm, "")) as object;
    const files: readonly (readonly [object, boolean])[] = [
      [starter, true],
      [{ name: "H", pack: { cells: 8 } }, true],
      [
        {
          $schema: "./aircraft.schema.json",
          name: "H",
          pack: { cells: 8 },
          readings: [{ headerSignature: "a", rateHz: null }],
        },
        true,
      ],
      [{ pack: { cells: 8 } }, false],
      [{ name: "H", pack: { cells: 8.5 } }, false],
      [{ name: "H", pack: { cells: 8, color: "red" } }, false],
      [{ name: "H", pack: { cells: 8 }, reservePct: 200 }, false],
    ];
    for (const [file, expected] of files) {
      expect(isValid(file), JSON.stringify(file)).toBe(expected);
      expect(parseAircraftFile(JSON.stringify(file), "f").state === "read").toBe(expected);
    }
  });
});
