import { planResult, swapResult } from "../../../flight/judgement/index.ts";
import { type KnownParts, knownPartsFrom, NOTHING_KNOWN } from "../../../flight/prediction/index.ts";
import type { BookFiles } from "../../../season/logbook/index.ts";
import { planView, swapView } from "../../../show/report/index.ts";
import type { PlanAnswer, PlanWork, SwapAnswer, SwapWork } from "../messages.ts";
import { type Book, flightsOf } from "./book.ts";
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
    const known = knownFrom(files, withBook ? name : null);
    const result = planResult(facts, budget, known, { ...conditions, reservePct });
    return { kind: "plan", result, notices: [], view: planView(result, facts.pack.fullCellV, units) };
  });
}

/** Before and after a change; a reserve given is that of the changed side. */
export function swapWork(work: SwapWork, book: Book): Promise<SwapAnswer> {
  const { aircraft, withBook, change, conditions, units = "metric" } = work;
  return book.read((files) => {
    const chosen = wantedAircraft(aircraft, files);
    if (chosen.state === "stopped") return { kind: "swap", result: null, notices: chosen.notices, view: "" };
    const { facts, budget, name } = chosen.aircraft;
    const before = { ambientC: null, elevationM: null, reservePct: budget.reservePct };
    const after = { ...conditions, reservePct: conditions.reservePct ?? budget.reservePct };
    const known = knownFrom(files, withBook ? name : null);
    const result = swapResult(facts, budget, known, { before, after }, change);
    return { kind: "swap", result, notices: [], view: swapView(result, facts.pack.fullCellV, units) };
  });
}

function knownFrom(files: BookFiles, aircraft: string | null): KnownParts {
  if (aircraft === null) return NOTHING_KNOWN;
  const flights = flightsOf(files, aircraft);
  return knownPartsFrom(
    flights.map(({ check: { kind, complete, measures }, facts, given: { pack } }) => ({
      kind,
      complete,
      measures,
      facts,
      pack,
    })),
  );
}
