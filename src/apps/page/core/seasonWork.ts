import { aircraftOfBook, flightsOfAircraft, listResult, readFlights } from "../../../season/logbook/index.ts";
import { timerResult } from "../../../season/timer/index.ts";
import { trendsOf } from "../../../season/trends/index.ts";
import { seasonPage, timerView, trendsView } from "../../../show/report/index.ts";
import type {
  ListAnswer,
  ListWork,
  SeasonAnswer,
  SeasonWork,
  TimerAnswer,
  TimerWork,
  TrendAnswer,
  TrendWork,
} from "../messages.ts";
import { type Book, flightsOf, keptFlightsOf } from "./book.ts";
import { sha256Of } from "./sha256.ts";
import { wantedAircraft } from "./wantedAircraft.ts";

export function listWork({ aircraft }: ListWork, book: Book): Promise<ListAnswer> {
  return book.read((files) => {
    const index = readFlights(files, sha256Of);
    return {
      kind: "list",
      list: listResult(index, aircraft),
      logs: flightsOfAircraft(index.entries, aircraft).map(({ log }) => log.sha256),
      aircraft: aircraftOfBook(files).aircraft.map(({ name, path, text }) => ({ name, path, text })),
    };
  });
}

export function timerWork(work: TimerWork, book: Book): Promise<TimerAnswer> {
  const { pack, ambientC, reservePct, startPct } = work;
  return book.read((files) => {
    const chosen = wantedAircraft(work.aircraft, files);
    if (chosen.state === "stopped") return { kind: "timer", result: null, notices: chosen.notices, view: "" };
    const { name, facts, budget } = chosen.aircraft;
    const next = { pack, ambientC, reservePct: reservePct ?? budget.reservePct, startPct };
    const flights = flightsOf(files, name);
    const result = timerResult(flights, facts, next);
    return { kind: "timer", result, notices: [], view: timerView(flights, result) };
  });
}

export function trendWork({ aircraft }: TrendWork, book: Book): Promise<TrendAnswer> {
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped") return { kind: "trend", result: null, notices: chosen.notices, view: "" };
    const { name } = chosen.aircraft;
    const flights = keptFlightsOf(files, name);
    const result = trendsOf(flights, name);
    return { kind: "trend", result, notices: [], view: trendsView(flights, result) };
  });
}

export function seasonWork({ aircraft }: SeasonWork, book: Book): Promise<SeasonAnswer> {
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped") return { kind: "season", result: null, notices: chosen.notices };
    const flights = keptFlightsOf(files, chosen.aircraft.name);
    return { kind: "season", result: seasonPage(flights, chosen.aircraft, book.release, null), notices: [] };
  });
}
