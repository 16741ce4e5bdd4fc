import { checkLog, NO_FACTS, parseAircraftFile, starterAircraftFile } from "../../src/index.ts";
import { NO_READING_OPTIONS } from "../../src/log/reading/index.ts";
import { mutatedOf } from "./underFire.ts";

const AIRCRAFT = aircraft();

function aircraft() {
  const read = parseAircraftFile(starterAircraftFile("Tern"), "starter");
  if ("facts" in read) return { facts: { ...read.facts, pack: { ...NO_FACTS.pack } }, budget: read.budget };
  throw new Error("the starter aircraft file cannot be read");
}

/** A mutated log through the whole check, against an aircraft: no number of the result is NaN or infinite. */
export function wholeCheckTrial(seed: number): string | null {
  const { bytes, how } = mutatedOf(seed);
  const { check } = checkLog(bytes, {
    file: "log.csv",
    sha256: "",
    aircraft: "Tern",
    facts: AIRCRAFT.facts,
    budget: AIRCRAFT.budget,
    readings: [],
    options: NO_READING_OPTIONS,
    day: { ambientC: null, startPct: null },
  });
  const bad = badNumberAt(check, "check");
  return bad === null ? null : `${how.join(", ")}: ${bad}`;
}

/** Where a value holds a number that JSON cannot write, or null. */
function badNumberAt(value: unknown, path: string): string | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (typeof value === "string")
    return /\bNaN\b|\bundefined\b/.test(value.replace(/"[^"]*"/g, "")) ? `${path}: ${value}` : null;
  if (value === null || typeof value !== "object") return null;
  for (const [key, each] of Object.entries(value)) {
    const bad = badNumberAt(each, `${path}.${key}`);
    if (bad !== null) return bad;
  }
  return null;
}
