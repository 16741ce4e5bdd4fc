import { KELVIN_AT_ZERO_CELSIUS, METRES_PER_FOOT } from "../../base/quantity/index.ts";

export type Dimension =
  | "time"
  | "voltage"
  | "current"
  | "rotation"
  | "temperature"
  | "charge"
  | "ratio"
  | "length"
  | "velocity"
  | "other";

/** A unit a log may be written in: value in the channel's unit = value * factor + offset. */
export interface Unit {
  readonly dimension: Dimension;
  /** Spelling of the results: "mV", "degF", "ms". */
  readonly name: string;
  readonly factor: number;
  readonly offset: number;
}

function unit(dimension: Dimension, name: string, factor: number, offset = 0): Unit {
  return { dimension, name, factor, offset };
}

const KNOT = 1852 / 3600;
const MILE = 1609.344;

/** Spellings, lower case, of each unit. A spelling may mean several units of different dimensions. */
const TABLE: readonly (readonly [Unit, readonly string[]])[] = [
  [
    unit("time", "s", 1),
    ["s", "sec", "secs", "second", "seconds", "sek", "sekunde", "sekunden", "seg", "segundos", "secondes"],
  ],
  [
    unit("time", "ms", 1e-3),
    ["ms", "msec", "msecs", "millis", "millisecond", "milliseconds", "millisekunden", "millisecs"],
  ],
  [
    unit("time", "us", 1e-6),
    ["us", "µs", "μs", "usec", "usecs", "micros", "microsecond", "microseconds", "mikrosekunden"],
  ],
  [unit("time", "0.1s", 0.1), ["0.1s", "0.1 s", "1/10s", "1/10 s"]],
  [unit("time", "ns", 1e-9), ["ns", "nsec", "nanos", "nanosecond", "nanoseconds"]],
  [unit("time", "d", 86_400), ["d", "days"]],
  [unit("time", "min", 60), ["min", "mins", "minute", "minutes", "minuten", "minutos"]],
  [unit("time", "h", 3600), ["h", "hr", "hrs", "hour", "hours", "stunden"]],
  [unit("voltage", "V", 1), ["v", "volt", "volts", "vdc"]],
  [unit("voltage", "mV", 1e-3), ["mv", "millivolt", "millivolts"]],
  [unit("voltage", "cV", 1e-2), ["cv", "centivolt", "centivolts"]],
  [unit("voltage", "dV", 1e-1), ["dv", "decivolt", "decivolts"]],
  [unit("current", "A", 1), ["a", "amp", "amps", "ampere", "amperes", "adc"]],
  [unit("current", "mA", 1e-3), ["ma", "milliamp", "milliamps", "milliampere", "milliamperes"]],
  [unit("current", "cA", 1e-2), ["ca", "centiamp", "centiamps"]],
  [unit("current", "dA", 1e-1), ["da", "deciamp", "deciamps"]],
  [
    unit("rotation", "rev/min", 1),
    [
      "rpm",
      "rev/min",
      "revs/min",
      "r/min",
      "1/min",
      "/min",
      "min-1",
      "min^-1",
      "min⁻¹",
      "u/min",
      "upm",
      "tr/min",
      "tpm",
      "erpm",
      "{rev}/min",
      "revpermin",
      "rev per min",
      "revs per minute",
      "1/minute",
    ],
  ],
  [unit("rotation", "krpm", 1000), ["krpm", "rpm x1000", "x1000 rpm", "1000/min", "rpm*1000"]],
  [unit("rotation", "100 rev/min", 100), ["rpm x100", "x100 rpm", "rpm*100", "100rpm", "100/min"]],
  [unit("rotation", "Hz", 60), ["hz", "rps", "rev/s", "1/s", "r/s", "u/s"]],
  [unit("rotation", "rad/s", 30 / Math.PI), ["rad/s", "rads"]],
  [
    unit("temperature", "degC", 1),
    [
      "c",
      "°c",
      "ºc",
      "˚c",
      "\ufffdc",
      "degc",
      "deg c",
      "deg.c",
      "cel",
      "celsius",
      "℃",
      "grad",
      "gradc",
      "grad c",
    ],
  ],
  [
    unit("temperature", "degF", 1 / 1.8, -32 / 1.8),
    ["f", "°f", "ºf", "˚f", "\ufffdf", "degf", "deg f", "[degf]", "fahrenheit", "℉"],
  ],
  [unit("temperature", "K", 1, -KELVIN_AT_ZERO_CELSIUS), ["k", "kelvin", "°k"]],
  [
    unit("temperature", "0.1 degC", 0.1),
    ["ddegc", "decidegc", "0.1c", "0.1°c", "c/10", "dc", "degc/10", "1/10c", "1/10 °c"],
  ],
  [unit("temperature", "0.01 degC", 0.01), ["cdegc", "centidegc", "0.01c", "0.01°c", "c/100", "degc/100"]],
  [unit("charge", "mAh", 1), ["mah", "ma.h", "ma h", "milliamphours", "milliamp hours", "milliampere hours"]],
  [unit("charge", "Ah", 1000), ["ah", "a.h", "amphours", "amp hours", "ampere hours"]],
  [unit("ratio", "%", 1), ["%", "pct", "percent", "prozent", "perc", "prc", "pourcent", "[%]"]],
  [unit("ratio", "0-1", 100), ["0-1", "0..1", "fraction", "ratio", "unit"]],
  [unit("ratio", "us", 0.1, -100), ["us", "µs", "μs", "usec"]],
  [unit("length", "m", 1), ["m", "metre", "metres", "meter", "meters", "mtr"]],
  [unit("length", "ft", METRES_PER_FOOT), ["ft", "feet", "foot", "fuss"]],
  [unit("length", "cm", 0.01), ["cm", "centimetres", "centimeters"]],
  [unit("length", "dm", 0.1), ["dm"]],
  [unit("length", "mm", 0.001), ["mm", "millimetres"]],
  [unit("length", "km", 1000), ["km"]],
  [
    unit("velocity", "m/s", 1),
    ["m/s", "ms", "mps", "ms-1", "m s-1", "m/sec", "meters/second", "metres/second"],
  ],
  [unit("velocity", "cm/s", 0.01), ["cm/s", "cmps"]],
  [unit("velocity", "km/h", 1 / 3.6), ["km/h", "kmh", "kph", "kmph"]],
  [unit("velocity", "mph", MILE / 3600), ["mph", "mi/h"]],
  [unit("velocity", "kn", KNOT), ["kn", "kt", "kts", "knot", "knots", "knoten"]],
  [unit("velocity", "ft/s", METRES_PER_FOOT), ["ft/s", "fps", "feet/s"]],
];

/** Units of quantities that no channel holds. */
const OTHER: ReadonlySet<string> = new Set([
  "w",
  "kw",
  "mw",
  "watt",
  "watts",
  "wh",
  "mwh",
  "kwh",
  "j",
  "kj",
  "ohm",
  "ohms",
  "mohm",
  "mω",
  "ω",
  "kv",
  "g",
  "kg",
  "n",
  "nm",
  "n.m",
  "deg",
  "°",
  "deg/s",
  "°/s",
  "rad",
  "db",
  "dbm",
  "hpa",
  "pa",
  "kpa",
  "mbar",
  "bar",
  "khz",
  "mhz",
  "g0",
  "m/s2",
  "m/s^2",
  "m/s²",
  "bool",
  "bit",
  "bits",
  "hex",
  "text",
  "string",
  "raw",
  "count",
  "n/a",
  "lat",
  "lon",
  "clock",
  "date",
  "time",
  "hh:mm:ss",
  "oz",
  "lb",
  "#",
]);

const BY_SPELLING = new Map<string, Unit[]>();
for (const [each, spellings] of TABLE) {
  for (const spelling of spellings) BY_SPELLING.set(spelling, [...(BY_SPELLING.get(spelling) ?? []), each]);
}

function normalised(text: string): string {
  const bare = text.trim().toLowerCase();
  return bare.replace(/^[[({<]\s{0,5}(.*?)\s{0,5}[\])}>]$/, "$1").replace(/\s{2,}/g, " ");
}

/** Every unit that a text can mean; empty when it is none. */
export function unitsFromText(text: string): readonly Unit[] {
  return BY_SPELLING.get(normalised(text)) ?? [];
}

/** True for any unit, also of quantities that no channel holds. */
export function isUnitText(text: string): boolean {
  const bare = normalised(text);
  return BY_SPELLING.has(bare) || OTHER.has(bare);
}

export function isOtherUnit(text: string): boolean {
  const bare = normalised(text);
  return OTHER.has(bare) && !BY_SPELLING.has(bare);
}

/** The unit of a dimension by any spelling, or null. */
export function unitOf(dimension: Dimension, text: string): Unit | null {
  return unitsFromText(text).find((each) => each.dimension === dimension) ?? null;
}

/** The spellings of a dimension's units as results name them. */
export function unitNames(dimension: Dimension): readonly string[] {
  return TABLE.filter(([each]) => each.dimension === dimension).map(([each]) => each.name);
}
