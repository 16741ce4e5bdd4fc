import * as v from "valibot";
import { type AircraftFile, aircraftSchema } from "./schema.ts";

/** A value that the schema does not allow, and where it stands. */
export interface ValueIssue {
  readonly path: readonly (string | number)[];
  /** What the file says; undefined when the key is missing. */
  readonly input: unknown;
}

export type Validated =
  | { readonly state: "right"; readonly file: AircraftFile }
  | { readonly state: "wrong"; readonly issues: readonly ValueIssue[] };

/** Holds plain data against the schema and fills in the defaults. */
export function validate(value: unknown): Validated {
  const result = v.safeParse(aircraftSchema, value);
  if (result.success) return { state: "right", file: result.output };
  const issues = result.issues.map(({ path, input }) => ({
    path: (path ?? []).map((item) => item.key as string | number),
    input,
  }));
  return { state: "wrong", issues };
}
