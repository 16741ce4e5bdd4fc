import { FLIGHT_FOLDER } from "./bookFormat.ts";

const ENDING = ".json";
const LONGEST_NAME = 60;
/** Names that Windows keeps for devices, whatever ending follows (Microsoft, Naming Files, Paths, and Namespaces). */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/** A name that is harmless as a file name on any system: letters, digits, dot, dash and underscore of ASCII. */
export function harmlessName(name: string): string {
  const plain = name
    .replace(/[^A-Za-z0-9._-]+/g, "-")
    .replace(/\.{2,}/g, ".")
    .replace(/^[-._]+/, "")
    .slice(0, LONGEST_NAME)
    .replace(/[-._]+$/, "");
  if (plain === "") return "log";
  return RESERVED.test(plain) ? `log-${plain}` : plain;
}

/** The file name without its last ending: "flight-03.csv" to "flight-03". */
export function withoutEnding(file: string): string {
  return file.replace(/\.[A-Za-z0-9]{1,5}$/, "");
}

/** Where a log is kept: a part of its digest, so that equal names do not meet, and its readable name. */
export function logPath(file: string, sha256: string): string {
  return `logs/${sha256.slice(0, 16)}-${harmlessName(file)}`;
}

export function flightPath(flight: string): string {
  return `${FLIGHT_FOLDER}${flight}.json`;
}

/** The flight whose file this is; null for any other path. */
export function flightIn(path: string): string | null {
  const isFlight = path.startsWith(FLIGHT_FOLDER) && path.endsWith(ENDING);
  return isFlight ? path.slice(FLIGHT_FOLDER.length, -ENDING.length) : null;
}

/** The flights whose files are among these paths, damaged ones too. */
export function flightsIn(paths: Iterable<string>): readonly string[] {
  return [...paths].flatMap((path) => flightIn(path) ?? []);
}

/** What is taken is compared without case: some disks do not tell "A" from "a". */
export function isTaken(name: string, taken: ReadonlySet<string>): boolean {
  return taken.has(name.toLowerCase());
}

/**
 * A name for a flight: its day and a running number of that day, else the name of its log; of several
 * flights in one log each gets a number.
 * @param taken names in use, in lower case
 */
export function flightName(
  day: string | null,
  file: string,
  place: { readonly index: number; readonly flights: number },
  taken: ReadonlySet<string>,
): string {
  if (day !== null) return firstFree((number) => `${day}-${number}`, taken);
  const name = harmlessName(withoutEnding(file));
  const base = place.flights > 1 ? `${name}-${place.index + 1}` : name;
  return firstFree((number) => (number === 1 ? base : `${base}-${number}`), taken);
}

export function firstFree(nameOf: (number: number) => string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const name = nameOf(number);
    if (!isTaken(name, taken)) return name;
  }
}
