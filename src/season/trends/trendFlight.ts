import type { HeatTrace } from "../../flight/analysis/index.ts";
import type { LogbookEntry } from "../logbook/index.ts";

/** A flight of the book with the trace that its heating is solved from; a book of an older release has none. */
export interface TrendFlight extends LogbookEntry {
  readonly check: LogbookEntry["check"] & { readonly heatTrace?: HeatTrace | null };
}
