import {
  type KnownQuantity,
  minutesAndSeconds,
  plainNumber,
  quantityText,
} from "../../../base/quantity/index.ts";
import { uncapital } from "../../../base/words/index.ts";

/** Every sentence and label of the sections on the parts that is not data. */

export function partTableSummary(name: string): string {
  return `${name} as a table`;
}

export const NOT_KNOWN = "Not known";

/** What shares one reason: "Static shaft speed; motor efficiency: no shaft speed channel in this log." */
export function notKnownText(names: readonly string[], why: string): string {
  const [first = "", ...others] = names;
  const lower = others.map(uncapital);
  return `${[first, ...lower].join("; ")}: ${why}.`;
}

/** "+1.3", "−0.4". */
export function signedNumber(value: number): string {
  return `${value < 0 ? "−" : "+"}${plainNumber(Math.abs(value))}`;
}

/** A change with its sign and its interval. */
export function signedText(change: KnownQuantity): string {
  const text = quantityText(change).replaceAll("-", "−");
  return change.value > 0 && /^[\d.]/.test(text) ? `+${text}` : text;
}

export const PACK = {
  title: "The pack under load",
  figure: "Pack volts against current",
  xAxis: "current, A",
  yAxis: "volts, moved to half of the charge drawn",
  line: (afterS: number): string => `after ${afterS} s`,
  key: "Dots: single samples, moved along the curve of the volts at no load. Lines: the fitted fall so long after a step; long loads sag further.",
  afterOne: "Resistance one second after a step",
  wholeLog: "by a fit to the whole log",
  afterTen: "Resistance ten seconds after a step",
  bySteps: "The same by steps of one second alone",
  caption: "Samples by current, their median, and the line after 10 s at the middle of each stretch",
  heads: ["current, A", "samples", "median, V", "line after 10 s, V"],
  caution: "A cold pack resists more: compare flights only where the pack was as warm.",
  lowest: "lowest",
  cells: "Cells side by side",
  packs: "Packs side by side",
  partsCaption: "At rest, at their lowest, their resistance, and their sag as a share of the mean one's",
  partHeads: ["which", "at rest", "lowest", "resistance", "share of the sag"],
  partName: (kind: "cell" | "pack", number: number): string => `${kind} ${number}`,
  difference: (value: string): string => `the fit gives ${value} mΩ`,
  notFound: (why: string): string => `The pack's resistance was not found: ${why}`,
} as const;

export function packLowest(belowV: number, currentA: number, atS: number): string {
  return `Ring: the lowest, at ${minutesAndSeconds(atS)}: ${plainNumber(belowV)} V below the volts at no load, at ${plainNumber(currentA)} A.`;
}

export function packStarts(packStartC: KnownQuantity): string {
  return `This pack began at ${quantityText(packStartC)}.`;
}

export const HEAT = {
  title: "The controller's heat",
  figure: "Controller temperature, measured and modelled",
  figureOfMeasured: "Controller temperature as measured",
  xAxis: "time, min:s",
  yAxis: "°C",
  measured: "measured",
  modelled: "modelled",
  hotDay: "hot day",
  says: {
    heatMeasured: "Measured, as logged.",
    heatModelled: "Modelled: heated by the current, cooled by the air, as the probe would show it.",
    heatHotDay: "The same flight on the hot day.",
  },
  air: "Air of the day",
  rise: "Steady rise per square ampere",
  until: "Full throttle until the limit",
  settles: "Full throttle settles",
  today: "today",
  fittedAir: (value: string): string => `The model takes ${value} °C around the controller.`,
  lag: (value: string): string => `The probe lags by about ${value}.`,
  at: (current: string): string => `at ${current} A`,
  onDayOf: (value: string): string => `on a day of ${value} °C`,
  caption: (step: string): string => `Controller temperature: a row about every ${step}, and the highest`,
  notFound: (why: string): string => `Heating and cooling were not found: ${why}`,
} as const;

export function limitAt(limitC: number | null): string {
  return limitC === null ? "" : ` of ${plainNumber(limitC)} °C`;
}

export const LOAD = {
  title: "Motor and propeller",
  figure: "Current against shaft speed at full throttle",
  xAxis: "shaft speed, rev/min",
  yAxis: "motor current, A",
  yAxisOfOne: "current of one motor, A",
  motor: "motor",
  propeller: "propeller",
  meet: "lines meet",
  staticRun: "static run",
  meetSpeed: "Shaft speed where the lines meet",
  meetCurrent: "Current where the lines meet",
  published: "Power coefficient published for its kind",
  unloading: "In flight, power coefficient over static",
  unloadingRemark: "Below 1 the moving air unloads the blades.",
  flightEfficiency: "Motor efficiency in flight",
  offeredKv: "kv that full throttle asks for",
  measuredLine: "The propeller's line is from its measured power coefficient; the shade is its interval.",
  publishedLine:
    "The propeller's line is from coefficients published for its kind; the shade is their spread.",
  asLogged: "Speeds are shown as logged.",
  caption: "Current at full throttle by shaft speed, and the interval of the propeller's",
  heads: ["shaft speed, rev/min", "motor gives, A", "propeller asks, A", "propeller's interval, A"],
  none: "none",
  ring: "Ring with bars: where motor and propeller agree, with its interval.",
  disc: (isEstimated: boolean): string =>
    `Disc: the static run, its current ${isEstimated ? "estimated" : "logged"}.`,
  notDrawn: (why: string): string => `Motor and propeller cannot be set against each other: ${why}`,
} as const;

export const WHY_OFF = {
  title: "Why the plan was off",
  key: "Bars lead from the planned value (upright mark) to the measured one (disc). The line under a bar is its 95 % interval.",
  planned: "Planned",
  measured: "Measured",
  planItself: "The plan itself",
  rest: "Not explained",
  missing: (facts: readonly string[]): string => `Not in it: ${facts.join("; ")}.`,
} as const;
