import type { LogbookEntry } from "../logbook/index.ts";
import { flownPropeller } from "../timer/index.ts";

/** The flights with one value of a key, in order; the groups in the order of their first flight. */
export function groupsBy<Flight>(
  entries: readonly Flight[],
  keyOf: (entry: Flight) => string,
): readonly (readonly Flight[])[] {
  const groups = new Map<string, Flight[]>();
  for (const entry of entries) {
    const key = keyOf(entry);
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
  }
  return [...groups.values()];
}

/** Everything about a controller that the aircraft file says: another value is another controller. */
export function controllerKey({ facts }: LogbookEntry): string {
  const { continuousA, burstA, burstS, limitC, resistanceMohm } = facts.controller;
  return [continuousA, burstA, burstS, limitC, resistanceMohm].join("/");
}

export function controllerName({ facts }: LogbookEntry): string | null {
  const { continuousA } = facts.controller;
  return continuousA === null ? null : `${continuousA} A`;
}

/** Propeller, motor and controller: what heating per square ampere and the power coefficient belong to. */
export function powerTrainKey(entry: LogbookEntry): string {
  const { kv, windingOhm, count } = entry.facts.motor;
  return [flownPropeller(entry) ?? "", kv, windingOhm, count, controllerKey(entry)].join("|");
}

/** Propeller, motor and size of the pack: what the charge rate belongs to. */
export function demandKey(entry: LogbookEntry): string {
  const { kv, count } = entry.facts.motor;
  return [flownPropeller(entry) ?? "", kv, count, entry.facts.pack.cells].join("|");
}

/** One pack: its name, or the only one nobody named, of this cell count and capacity. */
export function packKey({ given, facts }: LogbookEntry): string {
  return [given.pack ?? "", facts.pack.cells, facts.pack.capacityMah].join("|");
}
