import { editJsonText, readJsonText, valueAt } from "./jsonText.ts";
import type { RememberedReading } from "./readings.ts";

/**
 * The text of an aircraft file with one more remembered reading, or with the one of the same header
 * signature replaced. Comments and layout of the rest stay as they are. `text` must be a readable file.
 */
export function withRememberedReading(text: string, reading: RememberedReading): string {
  const mark = text.startsWith("\uFEFF") ? "\uFEFF" : "";
  const body = text.slice(mark.length);
  const known = valueAt(readJsonText(body), ["readings"]);
  const readings = Array.isArray(known) ? (known as readonly Partial<RememberedReading>[]) : null;
  const value = givenParts(reading);
  if (readings === null) return mark + editJsonText(body, ["readings"], [value]);
  const at = readings.findIndex(({ headerSignature }) => headerSignature === reading.headerSignature);
  return mark + editJsonText(body, ["readings", at < 0 ? readings.length : at], value);
}

/** Only what was answered: the file stays short. */
function givenParts(reading: RememberedReading): object {
  const entries = Object.entries(reading).filter(([, part]) =>
    typeof part === "object" && part !== null ? Object.keys(part).length > 0 : part !== null,
  );
  return Object.fromEntries(entries);
}
