import { flownPropeller } from "../timer/index.ts";
import type { SeasonFlight } from "./place.ts";

export type FittedPart = "propeller" | "controller" | "motor" | "pack size";

/** A part that differs from the flight before: trends that rest on it start a new series there. */
export interface FittingChange {
  readonly part: FittedPart;
  /** Place of the first flight with the new part. */
  readonly place: number;
  readonly number: number | null;
  readonly from: string;
  readonly to: string;
}

const UNNAMED = "not stated";

/** Every change of what is fitted, in the order of flying. Packs by name alternate and are no change. */
export function fittingChanges(flights: readonly SeasonFlight[]): readonly FittingChange[] {
  return flights.flatMap((flight, at) => {
    const before = flights[at - 1];
    return before === undefined ? [] : changesBetween(before, flight);
  });
}

function changesBetween(before: SeasonFlight, now: SeasonFlight): readonly FittingChange[] {
  return PARTS.flatMap(({ part, nameOf }) => {
    const [from, to] = [nameOf(before), nameOf(now)];
    return from === to ? [] : [{ part, place: now.place, number: now.number, from, to }];
  });
}

const PARTS: readonly { readonly part: FittedPart; readonly nameOf: (flight: SeasonFlight) => string }[] = [
  { part: "propeller", nameOf: ({ entry }) => flownPropeller(entry) ?? UNNAMED },
  { part: "controller", nameOf: controllerName },
  { part: "motor", nameOf: motorName },
  { part: "pack size", nameOf: packSize },
];

function controllerName({ entry }: SeasonFlight): string {
  const { continuousA, burstA, limitC } = entry.facts.controller;
  return words([unit(continuousA, "A"), unit(burstA, "A burst"), unit(limitC, "°C limit")]);
}

function motorName({ entry }: SeasonFlight): string {
  const { kv, count } = entry.facts.motor;
  return words([unit(kv, "rev/min per volt"), count === 1 ? null : `${count} motors`]);
}

function packSize({ entry }: SeasonFlight): string {
  const { cells, capacityMah } = entry.facts.pack;
  return words([unit(cells, "cells"), unit(capacityMah, "mAh")]);
}

function unit(value: number | null, name: string): string | null {
  return value === null ? null : `${value} ${name}`;
}

function words(parts: readonly (string | null)[]): string {
  const known = parts.filter((part) => part !== null);
  return known.length === 0 ? UNNAMED : known.join(", ");
}
