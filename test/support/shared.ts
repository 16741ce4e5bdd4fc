import { existsSync } from "node:fs";
import { resolve } from "node:path";

/** The folder of shared material beside the checkout, or null: then tests that need it say so and skip. */
export function sharedFolder(): string | null {
  const folder = process.env.TALLYWATT_SHARED ?? resolve(import.meta.dirname, "../../../shared");
  return existsSync(resolve(folder, "README.md")) ? folder : null;
}

/** A title for a suite that needs the shared folder, saying so when it is absent. */
export function withShared(title: string): string {
  return sharedFolder() === null ? `${title} (skipped: the shared folder is absent)` : title;
}
