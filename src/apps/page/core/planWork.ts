import type { Facts } from "../../../aircraft/facts.ts";
import { planResult, swapResult } from "../../../flight/judgement/index.ts";
import {
  isBelieved,
  type KnownParts,
  knownFromBelieved,
  type NamedFlight,
  runInLog,
} from "../../../flight/prediction/index.ts";
import { type BookFiles, flightsOfAircraft, type LogbookEntry } from "../../../season/logbook/index.ts";
import { planView, swapView } from "../../../show/report/index.ts";
import type {
  KnownFrom,
  MeasuredLog,
  PlanAnswer,
  PlanWork,
  RestsOn,
  SwapAnswer,
  SwapWork,
} from "../messages.ts";
import { allFlights, type Book } from "./book.ts";
import { wantedAircraft } from "./wantedAircraft.ts";

const NO_FLIGHTS: RestsOn = { inBook: 0, inLogs: 0, leftOut: 0, logs: [] };

/** The plan of an aircraft. */
export function planWork(work: PlanWork, book: Book): Promise<PlanAnswer> {
  const { aircraft, conditions, units = "metric" } = work;
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped")
      return { kind: "plan", result: null, notices: chosen.notices, view: "", flights: NO_FLIGHTS };
    const { facts, budget, name } = chosen.aircraft;
    const { known, flights } = knownOf(name, facts, files, work);
    const result = planResult(facts, budget, known, { ...conditions, reservePct: budget.reservePct });
    const view = planView(result, facts.pack.fullCellV, units);
    return { kind: "plan", result, notices: [], view, flights };
  });
}

/** Before and after a change; a reserve given is that of the changed side. */
export function swapWork(work: SwapWork, book: Book): Promise<SwapAnswer> {
  const { aircraft, change, conditions, units = "metric" } = work;
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped")
      return { kind: "swap", result: null, notices: chosen.notices, view: "", flights: NO_FLIGHTS };
    const { facts, budget, name } = chosen.aircraft;
    const before = { ambientC: null, elevationM: null, reservePct: budget.reservePct };
    const after = { ...conditions, reservePct: conditions.reservePct ?? budget.reservePct };
    const { known, flights } = knownOf(name, facts, files, work);
    const result = swapResult(facts, budget, known, { before, after }, change);
    const view = swapView(result, facts.pack.fullCellV, units);
    return { kind: "swap", result, notices: [], view, flights };
  });
}

/** The parts as the book's flights show them, and then those of the logs that are not in it. */
function knownOf(
  aircraft: string,
  facts: Facts,
  files: BookFiles,
  { withBook, logs }: KnownFrom,
): { readonly known: KnownParts; readonly flights: RestsOn } {
  const kept = withBook ? allFlights(files) : [];
  const entries = flightsOfAircraft(kept, aircraft);
  const ofBook = entries.map(loggedFlight);
  const ofLogs = otherLogs(logs, kept).map(({ sha256, file, flights }) => ({
    sha256,
    flights: flights.map((flight, at) => ({ ...flight, facts, name: runInLog(file, at, flights.length) })),
  }));
  const inLogs = ofLogs.flatMap(({ flights }) => flights);
  const known = knownFromBelieved([...ofBook, ...inLogs]);
  const flights = {
    inBook: ofBook.filter(isBelieved).length,
    inLogs: inLogs.filter(isBelieved).length,
    leftOut: known.leftOut.length,
    logs: ofLogs.filter((log) => log.flights.some(isBelieved)).map(({ sha256 }) => sha256),
  };
  return { known, flights };
}

/** The logs that the book does not hold, be it as another aircraft's; a log given twice counts once. */
function otherLogs(logs: readonly MeasuredLog[], kept: readonly LogbookEntry[]): readonly MeasuredLog[] {
  const seen = new Set(kept.map(({ log }) => log.sha256));
  return logs.filter(({ sha256 }) => {
    const isNew = !seen.has(sha256);
    seen.add(sha256);
    return isNew;
  });
}

function loggedFlight({ flight, check, facts, load, given: { pack } }: LogbookEntry): NamedFlight {
  return { ...check, facts, load, pack, name: flight };
}
