import { type ChannelName, isCellChannel } from "../../../base/channels/index.ts";
import { holeLimitS, type Recording } from "../../../log/recording/index.ts";
import { gapsOf, type Trace } from "../../charts/index.ts";
import type { FlightContext } from "../reportInput.ts";

/** A row array as a trace over this flight's window, its gaps found by the rule the sums use. */
export function traceOf(context: FlightContext, y: ArrayLike<number>): Trace {
  const { recording, analysed } = context;
  const range = { first: analysed.firstRow, last: analysed.lastRow };
  const gaps = gapsOf(recording.timeS, y, range, holeLimitS(recording.stepS));
  return { x: recording.timeS, y, ...range, gaps };
}

/** A logged channel whose sensor works; null otherwise. */
export function workingChannel(recording: Recording, channel: ChannelName): Float64Array | null {
  if (recording.dead.some((dead) => dead.channel === channel)) return null;
  const values = recording.channels.get(channel);
  return values?.some((value) => !Number.isNaN(value)) ? values : null;
}

/** Volts times amps of each row, as the highest power is defined; NaN where either is missing. */
export function powerOf(recording: Recording): Float64Array | null {
  const volts = workingChannel(recording, "packVoltage");
  const amps = workingChannel(recording, "current");
  if (volts === null || amps === null) return null;
  return volts.map((volt, row) => volt * (amps[row] ?? Number.NaN));
}

/** Lowest and highest cell of each row when cells are logged one by one; null when they are not. */
export function cellSpread(recording: Recording): { lowest: Float64Array; highest: Float64Array } | null {
  const names = [...recording.channels.keys()].filter(isCellChannel);
  const cells = names.flatMap((name) => workingChannel(recording, name) ?? []);
  if (cells.length === 0) return null;
  const lowest = new Float64Array(recording.rows).fill(Number.NaN);
  const highest = new Float64Array(recording.rows).fill(Number.NaN);
  for (const cell of cells) {
    cell.forEach((volt, row) => {
      if (Number.isNaN(volt)) return;
      if (!(volt >= (lowest[row] ?? 0))) lowest[row] = volt;
      if (!(volt <= (highest[row] ?? 0))) highest[row] = volt;
    });
  }
  return { lowest, highest };
}
