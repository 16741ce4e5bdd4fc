import { channelWords, isCellChannel } from "../../base/channels/index.ts";
import { isKnown, lengthInWords, quantityText } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import type { MeasureName } from "../../flight/analysis/index.ts";
import { isCurrentEstimated, MEASURE_WORDS } from "../../flight/analysis/index.ts";
import type { CheckedFlight, FlightCheck } from "../../flight/check/index.ts";
import { noticeCount } from "./noticeLines.ts";
import { oneLine } from "./printable.ts";

const MOST_FLIGHTS_SHOWN = 4;

/** The measures of each line, most wanted first; one that is not known is left to the report. */
const LINES: readonly (readonly MeasureName[])[] = [
  ["flightTimeS", "chargeUsedMah", "energyUsedWh", "chargeLeftPct"],
  ["peakCurrentA", "meanCurrentA", "peakPowerW", "staticRpm"],
  ["minCellV", "minPackV", "controllerPeakC", "controllerMarginC"],
];

/** Of these the reason is told when they cannot be given. */
const MAIN: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minPackV"];

/** Words on where to go from here. */
export interface SummaryEnd {
  /** Path of the report written, or null. */
  readonly report: string | null;
  /** The command line to type next. */
  readonly next: string;
}

/** At most eight lines for the terminal; computes nothing, so it cannot disagree with the JSON or the report. */
export function checkSummary(log: string, check: FlightCheck, end: SummaryEnd): readonly string[] {
  const { flights } = check;
  const only = flights.length === 1 ? flights[0] : undefined;
  return [
    readLine(log, check),
    ...(only ? [only.headline, ...measureLines(only)] : flightLines(flights)),
    noticeLine(check),
    ...(end.report === null ? [] : [`Report: ${end.report}`]),
    `Next: ${end.next}`,
  ].map(oneLine);
}

function noticeLine({ log }: FlightCheck): string {
  const where = log.notices.length === 0 ? "" : ", on standard error";
  return `${capital(noticeCount(log.notices))} about this log${where}.`;
}

function readLine(log: string, { log: read, flights }: FlightCheck): string {
  const found = flights.length === 1 ? kindWords(flights[0]) : `${flights.length} flights`;
  const length = lengthInWords(read.durationS);
  return `${log}: ${read.rowsUsed} of ${read.rows} rows, ${length}, ${found}; read ${channelList(read).join(", ")}.`;
}

/** The channels in words, all cells as one. */
function channelList({ channels }: FlightCheck["log"]): readonly string[] {
  const cells = channels.filter(({ channel }) => isCellChannel(channel)).length;
  const others = channels.filter(({ channel }) => channel !== "time" && !isCellChannel(channel));
  const words = others.map(({ channel }) => channelWords(channel));
  return cells === 0 ? words : [...words, `${cells} cell voltages`];
}

function kindWords(flight: CheckedFlight | undefined): string {
  const runs = flight !== undefined && isKnown(flight.measures.motorRunTimeS);
  if (flight?.kind === "benchRun") return runs ? "a bench run" : "no run of the motor seen";
  return flight?.complete === false ? "one flight, not complete" : "one flight";
}

function measureLines(flight: CheckedFlight): readonly string[] {
  return LINES.flatMap((names) => {
    const parts = names.filter((name) => isShown(name, flight)).map((name) => part(name, flight));
    return parts.length === 0 ? [] : [`${capital(parts.join(", "))}.`];
  });
}

function isShown(name: MeasureName, { measures }: CheckedFlight): boolean {
  if (name === "minPackV" && isKnown(measures.minCellV)) return false;
  return isKnown(measures[name]) || MAIN.includes(name);
}

/** Numbers of a current that nobody logged are called estimated. */
function part(name: MeasureName, { measures }: CheckedFlight): string {
  const quantity = measures[name];
  const isEstimate = isKnown(quantity) && quantity.basis === "estimated" && isCurrentEstimated(measures);
  return `${isEstimate ? "estimated " : ""}${MEASURE_WORDS[name]} ${quantityText(quantity)}`;
}

/** Several flights in one log: one line each. */
function flightLines(flights: readonly CheckedFlight[]): readonly string[] {
  const more = flights.length - MOST_FLIGHTS_SHOWN;
  const shown = more > 0 ? flights.slice(0, MOST_FLIGHTS_SHOWN - 1) : flights;
  const lines = shown.map((flight, index) => `Flight ${index + 1}: ${flight.headline} ${numbersOf(flight)}`);
  return more > 0 ? [...lines, `${more + 1} more flights are in the report and in --json.`] : lines;
}

function numbersOf(flight: CheckedFlight): string {
  const names: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minCellV"];
  const parts = names.filter((name) => isShown(name, flight)).map((name) => part(name, flight));
  return `${capital(parts.join(", "))}.`;
}
