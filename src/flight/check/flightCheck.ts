import type { ChannelName } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import type { Dialect, ReadLog } from "../../log/reading/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import type { AnalysedFlight, HeatTrace, Measures, Phase, WeakestPart } from "../analysis/index.ts";
import type { Judgement, PartMeanings, WhyOff } from "../judgement/index.ts";

/** One channel that was found, as the JSON result lists it. */
export interface CheckedChannel {
  readonly channel: ChannelName;
  readonly header: string;
  /** 1-based. */
  readonly column: number;
  readonly unit: string;
  readonly why: string;
}

export interface CheckedLog {
  readonly file: string;
  readonly sha256: string;
  readonly rows: number;
  readonly rowsUsed: number;
  readonly durationS: number;
  readonly holes: number;
  readonly holeS: number;
  readonly dialect: Dialect | null;
  readonly headerSignature: string | null;
  readonly channels: readonly CheckedChannel[];
  readonly notices: readonly Notice[];
}

export interface CheckedFlight {
  readonly kind: "flight" | "benchRun";
  readonly startedAt: string | null;
  readonly startS: number;
  readonly endS: number;
  readonly complete: boolean;
  readonly phases: readonly Phase[];
  readonly measures: Measures;
  /** Present where the charge left and the resting volts after landing cannot both be right. */
  readonly isChargeDoubtful?: true;
  readonly judgements: readonly Judgement[];
  /** Where each planned line that did not hold went; absent in books of older releases. */
  readonly whyOff?: readonly WhyOff[];
  /** Cells, or two packs in series, side by side; absent in books of older releases. */
  readonly weakestPart?: WeakestPart | null;
  /** What trends over flights solve the controller's heating from. */
  readonly heatTrace: HeatTrace | null;
  /** One sentence a pilot can act on, written from the numbers. */
  readonly headline: string;
}

/** What one log says: the JSON result of `check`, format tallywatt/flight-check version 1. */
export interface FlightCheck {
  readonly format: "tallywatt/flight-check";
  readonly version: 1;
  readonly aircraft: string | null;
  readonly log: CheckedLog;
  readonly flights: readonly CheckedFlight[];
}

export type ReadingOfLog = Omit<ReadLog, "timeS" | "channels">;

/** A check with what the pictures need; `recording` is null after a question or a refusal. */
export interface CheckedLogWithRows {
  readonly check: FlightCheck;
  /** How the log was read, without its rows: the recording holds those, repaired in place. */
  readonly readLog: ReadingOfLog | null;
  readonly recording: Recording | null;
  readonly analysed: readonly AnalysedFlight[];
  /** What the parts mean, flight by flight. */
  readonly meanings: readonly PartMeanings[];
}
