import type { Notice } from "../../base/notices/index.ts";
import type { DayFacts } from "../../flight/analysis/index.ts";
import { type CheckedLogWithRows, checkLog, type FlightCheck } from "../../flight/check/index.ts";
import type { LogBytes, ReadingOptions } from "../../log/reading/index.ts";
import { sha256OfParts } from "../disk/index.ts";
import type { Aircraft } from "./aircraftOption.ts";

export interface CheckSetting {
  readonly aircraft: Aircraft;
  readonly options: ReadingOptions;
  readonly day: DayFacts;
}

/** The flight check of one log's bytes; `file` is its name in the result. */
export function checkBytes(file: string, bytes: LogBytes, setting: CheckSetting): CheckedLogWithRows {
  const { aircraft, options, day } = setting;
  return checkLog(bytes, {
    file,
    sha256: sha256OfParts(bytes),
    aircraft: aircraft.name,
    facts: aircraft.facts,
    budget: aircraft.budget,
    readings: aircraft.readings,
    options,
    day,
  });
}

/** The same shape for a log that was never opened: no flights, and the notices that say why. */
export function notOpened(file: string, aircraft: string | null, notices: readonly Notice[]): FlightCheck {
  return {
    format: "tallywatt/flight-check",
    version: 1,
    aircraft,
    log: {
      file,
      sha256: "",
      rows: 0,
      rowsUsed: 0,
      durationS: 0,
      holes: 0,
      holeS: 0,
      dialect: null,
      headerSignature: null,
      channels: [],
      notices,
    },
    flights: [],
  };
}
