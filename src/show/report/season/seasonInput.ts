import type { Budget } from "../../../aircraft/budget.ts";
import type { Facts } from "../../../aircraft/facts.ts";
import type { CurrentCalibration, LogbookEntry } from "../../../season/logbook/index.ts";
import {
  type FittingChange,
  fittingChanges,
  groupSize,
  type JudgedFlight,
  judgementsOf,
  type SeasonFlight,
  seasonFlights,
} from "../../../season/overview/index.ts";
import type { TimerSetting } from "../../../season/timer/index.ts";
import type { TrendResult } from "../../../season/trends/index.ts";
import type { FlightAxis } from "../../charts/index.ts";
import { seasonAxis } from "./seasonAxis.ts";

export interface SeasonReportInput {
  readonly aircraft: string;
  /** In the order of flying. */
  readonly entries: readonly LogbookEntry[];
  readonly timer: TimerSetting;
  readonly trends: TrendResult;
  /** What is fitted now, and the plan as it is now. */
  readonly facts: Facts;
  readonly budget: Budget;
  readonly calibration: CurrentCalibration | null;
  readonly release: string;
  /** Relative link of each flight's own report by the flight's name; null when none were written. */
  readonly flightReportLinks: ReadonlyMap<string, string> | null;
}

/** The flights of a season, and how they stand along its charts. */
export interface FlightsContext {
  readonly flights: readonly SeasonFlight[];
  readonly byName: ReadonlyMap<string, SeasonFlight>;
  readonly changes: readonly FittingChange[];
  readonly axis: FlightAxis;
  /** How many neighbouring flights one point of a chart stands for. */
  readonly groupedBy: number;
}

/** What every section of the season is written from. */
export interface SeasonContext extends SeasonReportInput, FlightsContext {
  readonly judged: readonly JudgedFlight[];
}

export function seasonContext(input: SeasonReportInput): SeasonContext {
  const ofFlights = flightsContext(input.entries);
  const judged = ofFlights.flights.map((flight) => ({
    flight,
    judgements: judgementsOf(flight, input.budget),
  }));
  return { ...input, ...ofFlights, judged };
}

export function flightsContext(entries: readonly LogbookEntry[]): FlightsContext {
  const flights = seasonFlights(entries);
  return {
    flights,
    byName: new Map(flights.map((flight) => [flight.entry.flight, flight])),
    changes: fittingChanges(flights),
    axis: seasonAxis(flights),
    groupedBy: groupSize(flights.length),
  };
}
