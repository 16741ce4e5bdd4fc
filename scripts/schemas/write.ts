// Writes schemas/*.schema.json from the schemas in the source. Run: npm run schemas
import { mkdirSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { jsonSchemas } from "./jsonSchemas.ts";

const folder = resolve("schemas");
mkdirSync(folder, { recursive: true });
for (const [name, schema] of jsonSchemas()) {
  writeFileSync(resolve(folder, name), `${JSON.stringify(schema, null, 2)}\n`);
}
