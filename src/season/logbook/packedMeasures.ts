import type { Quantity } from "../../base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../flight/analysis/measures.ts";
import { withEveryMeasure } from "./entryText.ts";

const BASES = ["measured", "derived", "estimated", "predicted"] as const;

/** Measures that a timer asks of every flight; the others are unpacked only when one is asked for. */
const OFTEN: readonly MeasureName[] = [
  "flightTimeS",
  "chargeUsedMah",
  "chargeCoveredMah",
  "peakCurrentA",
  "packResistance10sMohm",
  "controllerHotDayPeakC",
  "controllerTimeConstantS",
  "controllerRisePerA2",
];

/** The order of the measures in packed texts: kept with them, since another release has others. */
export interface PackingOrder {
  readonly often: readonly MeasureName[];
  readonly rest: readonly MeasureName[];
}

export const PACKING_ORDER: PackingOrder = {
  often: OFTEN,
  rest: MEASURE_NAMES.filter((name) => !OFTEN.includes(name)),
};

/** A known quantity as [value, low, high, basis, more]; an unknown one as its reason. */
type Packed = string | readonly [number, number | null, number | null, number, object?];

/** Measures as two short JSON texts in PACKING_ORDER: the same numbers to the last digit. */
export function packMeasures(measures: Measures): readonly [string, string] {
  const { often, rest } = PACKING_ORDER;
  const part = (names: readonly MeasureName[]): string =>
    JSON.stringify(names.map((name) => packed(measures[name])));
  return [part(often), part(rest)];
}

/** Measures that are read from their packed texts when they are asked for; else like any others. */
export function unpackMeasures(often: string, rest: string, order: PackingOrder): Measures {
  return new Proxy<Lazy>({ often, rest, order, quick: null, all: null }, LAZY) as unknown as Measures;
}

type ByName = Partial<Record<MeasureName, Quantity>>;

interface Lazy {
  readonly often: string;
  readonly rest: string;
  readonly order: PackingOrder;
  quick: ByName | null;
  all: ByName | null;
}

const LAZY: ProxyHandler<Lazy> = {
  get: (lazy, name) => {
    lazy.quick ??= unpackedAll(lazy.often, lazy.order.often);
    return lazy.quick[name as MeasureName] ?? allOf(lazy)[name as MeasureName];
  },
  has: (lazy, name) => Object.hasOwn(allOf(lazy), name),
  ownKeys: (lazy) => Object.keys(allOf(lazy)),
  getOwnPropertyDescriptor: (lazy, name) => Object.getOwnPropertyDescriptor(allOf(lazy), name),
};

function allOf(lazy: Lazy): ByName {
  if (lazy.all !== null) return lazy.all;
  const { often, rest, order } = lazy;
  const found = { ...unpackedAll(often, order.often), ...unpackedAll(rest, order.rest) };
  const every = withEveryMeasure(found as Partial<Measures>);
  lazy.all = Object.fromEntries(MEASURE_NAMES.map((name) => [name, every[name]]));
  return lazy.all;
}

function unpackedAll(text: string, names: readonly MeasureName[]): ByName {
  const list = JSON.parse(text) as readonly Packed[];
  const measures: ByName = {};
  for (let at = 0; at < names.length; at += 1) {
    const name = names[at];
    const one = list[at];
    if (name !== undefined && one !== undefined) measures[name] = unpacked(one, MEASURE_UNITS[name]);
  }
  return measures;
}

function packed(quantity: Quantity): Packed {
  if (quantity.value === null) return quantity.why;
  const { value, low, high, unit: _unit, basis, ...more } = quantity;
  const plain = [value, low, high, BASES.indexOf(basis)] as const;
  return Object.keys(more).length === 0 ? plain : [...plain, more];
}

function unpacked(one: Packed, unit: string): Quantity {
  if (typeof one === "string") return { value: null, unit, why: one };
  const plain = {
    value: one[0],
    low: one[1],
    high: one[2],
    unit,
    basis: BASES[one[3]] ?? "estimated",
  } as const;
  return one[4] === undefined ? plain : { ...plain, ...one[4] };
}
