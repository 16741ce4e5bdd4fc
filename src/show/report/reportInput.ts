import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import type { AnalysedFlight } from "../../flight/analysis/index.ts";
import type { CheckedFlight, CheckedLogWithRows } from "../../flight/check/index.ts";
import type { PartMeanings } from "../../flight/judgement/index.ts";
import type { Recording } from "../../log/recording/index.ts";

export interface FlightReportInput {
  readonly checked: CheckedLogWithRows;
  readonly facts: Facts;
  readonly budget: Budget;
  /** Release of the program, shown in the footer. */
  readonly release: string;
}

/** What every section of one flight is written from. */
export interface FlightContext {
  /** Prefix of this flight's element ids, "f1". */
  readonly id: string;
  readonly number: number;
  readonly count: number;
  readonly flight: CheckedFlight;
  readonly analysed: AnalysedFlight;
  /** What the parts mean for the pilot. */
  readonly meanings: PartMeanings;
  readonly recording: Recording;
  readonly facts: Facts;
  readonly budget: Budget;
}

/** The flights of a log with their rows; empty after a question or a refusal. */
export function flightContexts({ checked, facts, budget }: FlightReportInput): readonly FlightContext[] {
  const { recording, analysed, check, meanings } = checked;
  if (recording === null) return [];
  return check.flights.flatMap((flight, index) => {
    const rows = analysed[index];
    const meaning = meanings[index];
    if (rows === undefined || meaning === undefined) return [];
    const id = `f${index + 1}`;
    return [
      {
        id,
        number: index + 1,
        count: check.flights.length,
        flight,
        analysed: rows,
        meanings: meaning,
        recording,
        facts,
        budget,
      },
    ];
  });
}
