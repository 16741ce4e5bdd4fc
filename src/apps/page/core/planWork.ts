import { planResult, swapResult } from "../../../flight/judgement/index.ts";
import { knownPartsFrom, type LoggedFlight } from "../../../flight/prediction/index.ts";
import { flightsOfAircraft, type LogbookEntry } from "../../../season/logbook/index.ts";
import { planView, swapView } from "../../../show/report/index.ts";
import type { MeasuredLog, PlanAnswer, PlanWork, SwapAnswer, SwapWork } from "../messages.ts";
import { allFlights, type Book, flightsOf } from "./book.ts";
import { wantedAircraft } from "./wantedAircraft.ts";

/** The plan of an aircraft, with its parts as the book's flights show them. */
export function planWork(
  { aircraft, withBook, conditions, units = "metric" }: PlanWork,
  book: Book,
): Promise<PlanAnswer> {
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped") return { kind: "plan", result: null, notices: chosen.notices, view: "" };
    const { facts, budget, name } = chosen.aircraft;
    const { reservePct } = budget;
    const known = knownPartsFrom(withBook ? flightsOf(files, name).map(loggedFlight) : []);
    const result = planResult(facts, budget, known, { ...conditions, reservePct });
    return { kind: "plan", result, notices: [], view: planView(result, facts.pack.fullCellV, units) };
  });
}

/**
 * Before and after a change, from the book's flights and then those of the logs that are not in it; a reserve given is that
 * of the changed side.
 */
export function swapWork(work: SwapWork, book: Book): Promise<SwapAnswer> {
  const { aircraft, withBook, logs, change, conditions, units = "metric" } = work;
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped")
      return {
        kind: "swap",
        result: null,
        notices: chosen.notices,
        view: "",
        flights: { inBook: 0, inLogs: 0 },
      };
    const { facts, budget, name } = chosen.aircraft;
    const before = { ambientC: null, elevationM: null, reservePct: budget.reservePct };
    const after = { ...conditions, reservePct: conditions.reservePct ?? budget.reservePct };
    const kept = withBook ? allFlights(files) : [];
    const entries = flightsOfAircraft(kept, name);
    const others = otherFlights(logs, kept);
    const known = knownPartsFrom([
      ...entries.map(loggedFlight),
      ...others.map((flight) => ({ ...flight, facts })),
    ]);
    const result = swapResult(facts, budget, known, { before, after }, change);
    const flights = { inBook: entries.length, inLogs: others.length };
    return {
      kind: "swap",
      result,
      notices: [],
      view: swapView(result, facts.pack.fullCellV, units),
      flights,
    };
  });
}

/** The flights of the logs that the book does not hold, be it as another aircraft's; a log given twice counts once. */
function otherFlights(logs: readonly MeasuredLog[], kept: readonly LogbookEntry[]): MeasuredLog["flights"] {
  const seen = new Set(kept.map(({ log }) => log.sha256));
  return logs.flatMap(({ sha256, flights }) => {
    if (seen.has(sha256)) return [];
    seen.add(sha256);
    return flights;
  });
}

function loggedFlight({ check, facts, given: { pack } }: LogbookEntry): LoggedFlight {
  const { kind, complete, measures } = check;
  return { kind, complete, measures, facts, pack };
}
