import { aircraftSchema, type SchemaShape } from "./schema.ts";

/** A key's path inside the file; list positions are numbers. */
export type KeyPath = readonly (string | number)[];

/** The schema below `optional`, `nullable` and pipes. */
function unwrap(schema: SchemaShape): SchemaShape {
  if (schema.wrapped) return unwrap(schema.wrapped);
  const inner = schema.pipe?.[0];
  return inner !== undefined && inner !== schema ? unwrap(inner as SchemaShape) : schema;
}

/** Keys that an object at this path may have, or null where no object belongs. */
export function keysAt(path: KeyPath): readonly string[] | null {
  const entries = schemaAt(path)?.entries;
  return entries ? Object.keys(entries) : null;
}

/** Words that a value at this path may be, or null where it is not one of a list. */
export function choicesAt(path: KeyPath): readonly string[] | null {
  const options = schemaAt(path)?.options;
  return options ? options.map(String) : null;
}

function schemaAt(path: KeyPath): SchemaShape | null {
  let shape: SchemaShape = unwrap(aircraftSchema as unknown as SchemaShape);
  for (const step of path) {
    const next = typeof step === "number" ? shape.item : ownEntry(shape, step);
    if (!next) return null;
    shape = unwrap(next);
  }
  return shape;
}

function ownEntry(shape: SchemaShape, key: string): SchemaShape | undefined {
  return shape.entries && Object.hasOwn(shape.entries, key) ? shape.entries[key] : undefined;
}

/** Every key path a user may write, lists left out: "pack.cells", "reservePct". */
export function allKeyPaths(): readonly string[] {
  return (keysAt([]) ?? []).flatMap((key) => {
    const below = keysAt([key]);
    return below ? [key, ...below.map((inner) => `${key}.${inner}`)] : [key];
  });
}

/** "readings[0].columns.time" for messages. */
export function pathText(path: KeyPath): string {
  return path.reduce<string>(
    (text, step) => (typeof step === "number" ? `${text}[${step}]` : text === "" ? step : `${text}.${step}`),
    "",
  );
}
