import { createHash } from "node:crypto";
import { parseAircraftFile } from "../../src/aircraft/index.ts";
import { checkLog } from "../../src/flight/check/index.ts";
import { NO_READING_OPTIONS } from "../../src/log/reading/index.ts";
import {
  type Added,
  aircraftOfBook,
  bringIn,
  keptReading,
  NOTHING_GIVEN,
  planAdd,
  type Store,
} from "../../src/season/logbook/index.ts";
import { SAMPLE_AIRCRAFT } from "../commands/sampleLog.ts";

export function digest(text: string | Uint8Array): string {
  return createHash("sha256").update(text).digest("hex");
}

/** Adds a log to a book of any kind as the page does. */
export async function addTo(store: Store, log: string): Promise<Added> {
  const parsed = parseAircraftFile(SAMPLE_AIRCRAFT, "heron.json");
  if (parsed.state !== "read") throw new Error("the sample aircraft is not read");
  const bytes = new TextEncoder().encode(log);
  const { facts, budget, readings } = parsed;
  const own = { file: "one.csv", sha256: digest(bytes), aircraft: facts.name, facts, budget, readings };
  const day = { ambientC: null, startPct: null };
  const checked = checkLog(bytes, { ...own, options: NO_READING_OPTIONS, day });
  const frame = { digest, release: "0.1.0", run: digest(bytes) };
  return store.change((files) =>
    planAdd(files, frame, {
      bytes,
      file: "one.csv",
      checked,
      aircraft: bringIn(aircraftOfBook(files), { ...parsed, text: SAMPLE_AIRCRAFT }),
      given: NOTHING_GIVEN,
      reading: keptReading(NO_READING_OPTIONS),
      isOfBook: true,
      chargedWith: [],
      isAgain: false,
    }),
  );
}
