import { expect, it } from "vitest";
import { parseAircraftFile } from "../../../src/aircraft/index.ts";
import { sha256Of } from "../../../src/apps/disk/index.ts";
import { checkLog } from "../../../src/flight/check/index.ts";
import { NO_READING_OPTIONS } from "../../../src/log/reading/index.ts";
import {
  aircraftOfBook,
  bringIn,
  keptReading,
  NOTHING_GIVEN,
  planAdd,
} from "../../../src/season/logbook/index.ts";
import { flightLog } from "../../commands/bookMachine.ts";

const TEXT = '{ "name": "Heron", "pack": { "cells": 8, "capacityMah": 4000 } }';
const EDITED = '{ "name": "Heron", "pack": { "cells": 8, "capacityMah": 5000 } }';

/** The aircraft's file after a log was added to a book in which it was edited while the log was analysed. */
function aircraftAfterAdd(isOfBook: boolean): string | undefined {
  const parsed = parseAircraftFile(TEXT, "heron.json");
  if (parsed.state === "refusal") throw new Error("the example must parse");
  const { facts, budget, readings } = parsed;
  const bytes = new TextEncoder().encode(flightLog());
  const own = { file: "one.csv", sha256: sha256Of(bytes), aircraft: facts.name, facts, budget, readings };
  const checked = checkLog(bytes, {
    ...own,
    options: NO_READING_OPTIONS,
    day: { ambientC: null, startPct: null },
  });
  const aircraft = bringIn(aircraftOfBook(new Map()), { ...parsed, text: TEXT });
  const files = new Map([[aircraft.path, EDITED]]);
  const change = planAdd(
    files,
    { digest: sha256Of, release: "0.1.0", run: "one" },
    {
      bytes,
      file: "one.csv",
      checked,
      aircraft,
      isOfBook,
      given: NOTHING_GIVEN,
      reading: keptReading(NO_READING_OPTIONS),
      chargedWith: [],
      isAgain: false,
    },
  );
  return change.files.find(({ path }) => path === aircraft.path)?.text ?? files.get(aircraft.path);
}

it("keeps an edit of the book's aircraft made while the log was analysed; a file from outside replaces it", () => {
  expect(aircraftAfterAdd(true)).toContain("5000");
  expect(aircraftAfterAdd(false)).toContain("4000");
});
