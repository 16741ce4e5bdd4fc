import type { Quantity } from "../../base/quantity/index.ts";
import {
  MEASURE_NAMES,
  MEASURE_UNITS,
  type MeasureName,
  type Measures,
} from "../../flight/analysis/index.ts";
import { withEveryMeasure } from "./entryText.ts";

const BASES = ["measured", "derived", "estimated", "predicted"] as const;

/** Measures that timers and lists ask of every flight; the others are unpacked only when one is asked for. */
const OFTEN: ReadonlySet<MeasureName> = new Set([
  "flightTimeS",
  "chargeUsedMah",
  "minCellV",
  "packResistance10sMohm",
  "controllerPeakC",
  "controllerHotDayPeakC",
  "controllerTimeConstantS",
  "controllerRisePerA2",
]);

/** A known quantity as [value, low, high, basis, more]; an unknown one as its reason. */
type Packed = string | readonly [number, number | null, number | null, number, object?];
type PackedByName = Readonly<Partial<Record<MeasureName, Packed>>>;

/** Measures as two short JSON texts, the often asked ones first: the same numbers to the last digit. */
export function packMeasures(measures: Measures): readonly [string, string] {
  const part = (isOften: boolean): string => {
    const names = MEASURE_NAMES.filter((name) => OFTEN.has(name) === isOften);
    return JSON.stringify(Object.fromEntries(names.map((name) => [name, packed(measures[name])])));
  };
  return [part(true), part(false)];
}

/** Measures that are read from their packed texts when they are asked for; else like any others. */
export function unpackMeasures(often: string, rest: string): Measures {
  return new Proxy<Lazy>({ often, rest, known: {}, isWhole: false }, LAZY) as unknown as Measures;
}

interface Lazy {
  readonly often: string;
  readonly rest: string;
  known: Partial<Record<MeasureName, Quantity>>;
  isWhole: boolean;
}

const LAZY: ProxyHandler<Lazy> = {
  get: (lazy, name) => {
    if (typeof name !== "string") return undefined;
    if (Object.keys(lazy.known).length === 0) lazy.known = unpackedAll(lazy.often);
    return Object.hasOwn(lazy.known, name)
      ? lazy.known[name as MeasureName]
      : whole(lazy)[name as MeasureName];
  },
  has: (lazy, name) => Object.hasOwn(whole(lazy), name),
  ownKeys: (lazy) => Object.keys(whole(lazy)),
  getOwnPropertyDescriptor: (lazy, name) => Object.getOwnPropertyDescriptor(whole(lazy), name),
};

function whole(lazy: Lazy): Partial<Record<MeasureName, Quantity>> {
  if (lazy.isWhole) return lazy.known;
  const all = withEveryMeasure({
    ...unpackedAll(lazy.often),
    ...unpackedAll(lazy.rest),
  } as Partial<Measures>);
  lazy.known = Object.fromEntries(MEASURE_NAMES.map((name) => [name, all[name]]));
  lazy.isWhole = true;
  return lazy.known;
}

function unpackedAll(text: string): Partial<Record<MeasureName, Quantity>> {
  const packedByName = JSON.parse(text) as PackedByName;
  const measures: Partial<Record<MeasureName, Quantity>> = {};
  for (const name of Object.keys(packedByName) as MeasureName[]) {
    const one = packedByName[name];
    if (one !== undefined && Object.hasOwn(MEASURE_UNITS, name))
      measures[name] = unpacked(one, MEASURE_UNITS[name]);
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
  const [value, low, high, basis, more] = one;
  const plain = { value, low, high, unit, basis: BASES[basis] ?? "estimated" } as const;
  return more === undefined ? plain : { ...plain, ...more };
}
