import type { ChannelName } from "../../src/base/channels/index.ts";
import type { ClockFacts, ReadLog } from "../../src/log/reading/index.ts";

/** What a test says about a log; the rest is that of a clean comma file with one header line. */
export interface LogColumns {
  readonly timeS: ArrayLike<number>;
  readonly channels: Readonly<Partial<Record<ChannelName, ArrayLike<number>>>>;
  readonly clock?: Partial<ClockFacts>;
  readonly dataLines?: number;
  readonly notices?: ReadLog["notices"];
}

/** A log as the reading step hands it on, from columns: row 0 stands on line 2. */
export function readLogOf(columns: LogColumns): ReadLog {
  const timeS = Float64Array.from(columns.timeS);
  const channels = new Map<ChannelName, Float64Array>();
  for (const [channel, values] of Object.entries(columns.channels)) {
    channels.set(channel as ChannelName, Float64Array.from(values as ArrayLike<number>));
  }
  return {
    dialect: { encoding: "utf-8", delimiter: ",", decimalMark: ".", headerLine: 1 },
    headerSignature: "test",
    columns: [],
    dataLines: columns.dataLines ?? timeS.length,
    rows: timeS.length,
    timeS,
    clock: { kind: "elapsed", wrapS: null, resolutionS: 0.1, textOfRow: () => null, ...columns.clock },
    channels,
    lineOfRow: (row) => row + 2,
    notices: columns.notices ?? [],
  };
}

/** No correction of any sensor. */
export const UNCORRECTED = { currentScale: 1, rpmDivisor: 1 } as const;
