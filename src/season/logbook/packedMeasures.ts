import type { Quantity } from "../../base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../flight/analysis/measures.ts";
import { withEveryMeasure } from "./entryText.ts";
import type { OftenMeasures } from "./oftenMeasures.ts";

const BASES = ["measured", "derived", "estimated", "predicted"] as const;

/** A known quantity as [value, low, high, basis, more]; an unknown one as its reason. */
type Packed = string | readonly [number, number | null, number | null, number, object?];

/** The measures of these names, in their order, as a short JSON value: the same numbers to the last digit. */
export function packMeasures(measures: Measures, names: readonly MeasureName[]): readonly Packed[] {
  return names.map((name) => packed(measures[name]));
}

/** Where the measures that are seldom asked for are: a JSON text of `packMeasures`, and their names. */
export interface SeldomMeasures {
  readonly text: () => string;
  readonly names: readonly MeasureName[];
}

/** Measures of which the seldom ones are read when one is asked for; else like any others. */
export function withSeldom(often: Partial<OftenMeasures>, seldom: SeldomMeasures): Measures {
  return new Proxy<Lazy>({ often, seldom, all: null }, LAZY) as unknown as Measures;
}

type ByName = Partial<Record<MeasureName, Quantity>>;

interface Lazy {
  readonly often: ByName;
  readonly seldom: SeldomMeasures;
  all: ByName | null;
}

const LAZY: ProxyHandler<Lazy> = {
  get: (lazy, name) => lazy.often[name as MeasureName] ?? allOf(lazy)[name as MeasureName],
  has: (lazy, name) => Object.hasOwn(allOf(lazy), name),
  ownKeys: (lazy) => Object.keys(allOf(lazy)),
  getOwnPropertyDescriptor: (lazy, name) => Object.getOwnPropertyDescriptor(allOf(lazy), name),
};

function allOf(lazy: Lazy): ByName {
  if (lazy.all !== null) return lazy.all;
  const { text, names } = lazy.seldom;
  const list = JSON.parse(text()) as readonly Packed[];
  const found: ByName = { ...lazy.often };
  for (const [at, name] of names.entries()) {
    const one = list[at];
    if (one !== undefined) found[name] = unpacked(one, MEASURE_UNITS[name]);
  }
  const every = withEveryMeasure(found as Partial<Measures>);
  lazy.all = Object.fromEntries(MEASURE_NAMES.map((name) => [name, every[name]]));
  return lazy.all;
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
