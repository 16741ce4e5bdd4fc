import type { ChannelName } from "../../../src/base/channels/index.ts";
import {
  NO_READING_OPTIONS,
  type ReadingOptions,
  type ReadLog,
  type ReadOutcome,
  readLog,
} from "../../../src/log/reading/index.ts";

export function outcomeOf(text: string | Uint8Array, options: Partial<ReadingOptions> = {}): ReadOutcome {
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  return readLog(bytes, { ...NO_READING_OPTIONS, ...options }, []);
}

export function noticesOf(outcome: ReadOutcome) {
  return outcome.state === "read" ? outcome.log.notices : outcome.notices;
}

/** The log, or a failure that shows what stopped it. */
export function logOf(text: string | Uint8Array, options: Partial<ReadingOptions> = {}): ReadLog {
  const outcome = outcomeOf(text, options);
  if (outcome.state === "read") return outcome.log;
  throw new Error(outcome.notices.map((notice) => notice.text).join("\n"));
}

export function codesOf(outcome: ReadOutcome): readonly string[] {
  return noticesOf(outcome).map((notice) => notice.code);
}

export function questionOf(text: string | Uint8Array, options: Partial<ReadingOptions> = {}) {
  const outcome = outcomeOf(text, options);
  const notice = noticesOf(outcome).find((each) => each.severity === "question");
  if (outcome.state !== "question" || notice === undefined) throw new Error(`state ${outcome.state}`);
  return notice;
}

export interface FlightRow {
  readonly s: number;
  readonly volts: number;
  readonly amps: number;
  readonly rpm: number;
  readonly celsius: number;
}

/** A short invented flight at 5 Hz: rest, climb, cruise, rest. */
export const FLIGHT: readonly FlightRow[] = Array.from({ length: 300 }, (_, row) => {
  const s = row / 5;
  const load = s < 5 ? 0 : s < 15 ? 1 : s < 50 ? 0.4 : 0;
  return {
    s,
    volts: Math.round((33.2 - 3 * load - s / 50) * 100) / 100,
    amps: Math.round((0.4 + 60 * load + (load > 0 ? Math.sin(row) : 0)) * 10) / 10,
    rpm: Math.round(7000 * Math.sqrt(load)),
    celsius: Math.round(20 + s / 4),
  };
});

/** The flight as a log: a header and one line per row. */
export function logText(
  header: string,
  row: (each: FlightRow) => readonly (string | number)[],
  delimiter = ",",
): string {
  return `${[header, ...FLIGHT.map((each) => row(each).join(delimiter))].join("\n")}\n`;
}

export function headerOf(log: ReadLog, channel: ChannelName): string | undefined {
  return log.columns.find((column) => column.channel === channel)?.header;
}
