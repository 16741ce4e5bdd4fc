import { isFormKey } from "./formKeys.ts";
import { editJsonText, keysInText, readJsonText, valueAt } from "./jsonText.ts";
import { pathText } from "./schemaWalk.ts";

/** What an aircraft file gives, by key path. */
export type AircraftValues = Readonly<Record<string, number | string>>;

/** The numbers and words that the text of a readable aircraft file gives; defaults are not among them. */
export function aircraftValues(text: string): AircraftValues {
  const json = readJsonText(text.replace(/^\uFEFF/, ""));
  const paths = (json.root ? keysInText(json.root) : []).map(({ path }) => path);
  const given = paths.flatMap((path) => {
    const value = valueAt(json, path);
    const isValue = typeof value === "number" || typeof value === "string";
    return isValue && isFormKey(pathText(path)) ? [[pathText(path), value] as const] : [];
  });
  return Object.fromEntries(given);
}

/**
 * The text of an aircraft file with keys set, null taking a key out. Comments and layout of the rest stay.
 * A value is written as it is given: reading the text says whether it may be. Throws on a key that no form has.
 */
export function editedAircraft(
  text: string,
  changes: Readonly<Record<string, number | string | null>>,
): string {
  const mark = text.startsWith("\uFEFF") ? "\uFEFF" : "";
  const body = Object.entries(changes).reduce((edited, [path, value]) => {
    if (!isFormKey(path)) throw new Error(`"${path}" is no key of the aircraft file`);
    const steps = path.split(".");
    if (value === null && valueAt(readJsonText(edited), steps) === undefined) return edited;
    return editJsonText(edited, steps, value ?? undefined);
  }, text.slice(mark.length));
  return mark + body;
}
