import { bareDriverAt } from "./controllerHeatDrivers.ts";
import type { FlightContext } from "./flightContext.ts";
import type { Identified } from "./identifiedMeasures.ts";
import type { HeatDriver } from "./measures.ts";
import { rowsWithin } from "./rowsBetween.ts";

/**
 * The controller's temperature and what may heat it in equal spans over one flight's window, small enough to be kept
 * with the flight: what trends over flights are computed from. Each row of numbers is one text, one number a span with
 * blanks between and "-" for none, so that a file stays readable.
 */
export interface HeatTrace {
  /** Length of a span, s. */
  readonly stepS: number;
  /** Means, degC to a tenth. */
  readonly temperatureC: string;
  /**
   * Per driver the steady current that heats alike in each span, A to a tenth: root mean square, for
   * powerFourThirds the mean power 4/3 taken to 3/4.
   */
  readonly drivers: readonly { readonly driver: HeatDriver; readonly currentA: string }[];
}

/** Beyond this many digits tenths are no whole numbers any more. */
const MOST_DIGITS = 14;
/** More spans than this are joined: a trace stays below 4 kB as JSON. */
const MOST_SPANS = 250;

/** The trace of one flight; null without current or a controller temperature that works. */
export function heatTraceOf({ rows }: FlightContext, { parts }: Identified): HeatTrace | null {
  const { readings } = parts.heat;
  if (readings === null || rows.lastRow <= rows.firstRow) return null;
  const { stepS, temperatureC, bareDrivers } = readings.samples;
  const joined = Math.ceil(temperatureC.length / MOST_SPANS);
  return {
    stepS: stepS * joined,
    temperatureC: numbersText(spanMeans(temperatureC, joined)),
    // The stand-in is kept without the flight's own full current, so that flights compare.
    drivers: readings.drivers.map(({ name, power }, index) => ({
      driver: name,
      currentA: numbersText(spanMeans(bareDrivers[index]!, joined).map((mean) => mean ** (1 / power))),
    })),
  };
}

/** Mean of the driver that the heating was fitted with between two times, A^2; null where it was not fitted. */
export function meanDriverA2(
  context: FlightContext,
  identified: Identified,
  startS: number,
  endS: number,
): number | null {
  const { driver } = identified.measures.controllerRisePerA2;
  const found = identified.parts.heat.readings?.drivers.find((one) => one.name === driver);
  if (found === undefined) return null;
  const { timeS } = context.recording;
  const { firstRow, lastRow } = rowsWithin(timeS, startS, endS);
  let sum = 0;
  let seconds = 0;
  let value = found.factor * bareDriverAt(found, firstRow);
  for (let row = firstRow + 1; row <= lastRow; row++) {
    const before = value;
    value = found.factor * bareDriverAt(found, row);
    const mean = (before + value) / 2;
    if (Number.isNaN(mean)) continue;
    const stepS = timeS[row]! - timeS[row - 1]!;
    sum += mean * stepS;
    seconds += stepS;
  }
  return seconds > 0 ? sum / seconds : null;
}

/** Means of `joined` values each, NaN left out; an incomplete span at the end is dropped. */
function spanMeans(values: Float64Array, joined: number): number[] {
  return Array.from({ length: Math.floor(values.length / joined) }, (_, span) => {
    let sum = 0;
    let count = 0;
    for (let k = span * joined; k < (span + 1) * joined; k++) {
      if (Number.isNaN(values[k]!)) continue;
      sum += values[k]!;
      count++;
    }
    return sum / count;
  });
}

/** A row of numbers as text, to a tenth; NaN is "-". */
export function numbersText(values: readonly number[]): string {
  return values.map((value) => (Number.isNaN(value) ? "-" : String(Math.round(10 * value) / 10))).join(" ");
}

const [DASH, DOT, ZERO] = [45, 46, 48];

/** The numbers of such a text again. */
export function numbersOf(text: string): Float64Array {
  const numbers = new Float64Array(text === "" ? 0 : blanksIn(text) + 1);
  for (let at = 0, start = 0; at < numbers.length; at++) {
    const blank = text.indexOf(" ", start);
    const end = blank < 0 ? text.length : blank;
    numbers[at] = tenthsIn(text, start, end) ?? wholeNumber(text.slice(start, end));
    start = end + 1;
  }
  return numbers;
}

function blanksIn(text: string): number {
  let blanks = 0;
  for (let at = text.indexOf(" "); at >= 0; at = text.indexOf(" ", at + 1)) blanks++;
  return blanks;
}

function wholeNumber(part: string): number {
  return part === "-" ? Number.NaN : Number(part);
}

/** "12.3" as 123 / 10, which is the nearest double too; null for what is written another way. */
function tenthsIn(text: string, start: number, end: number): number | null {
  const isNegative = text.charCodeAt(start) === DASH;
  let tenths = 0;
  let at = isNegative ? start + 1 : start;
  if (at === end || end - at > MOST_DIGITS) return null;
  for (; at < end && text.charCodeAt(at) !== DOT; at++) {
    const digit = text.charCodeAt(at) - ZERO;
    if (!(digit >= 0 && digit <= 9)) return null;
    tenths = 10 * tenths + digit;
  }
  tenths *= 10;
  if (at < end) {
    const digit = text.charCodeAt(at + 1) - ZERO;
    if (at + 2 !== end || !(digit >= 0 && digit <= 9)) return null;
    tenths += digit;
  }
  return (isNegative ? -tenths : tenths) / 10;
}
