import type { Budget } from "../../aircraft/budget.ts";
import type { Facts } from "../../aircraft/facts.ts";
import { type ExamplePart, examplePartsLeft } from "../../aircraft/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import {
  type LogBytes,
  type NotRead,
  type ReadingOptions,
  type ReadLog,
  type RememberedReading,
  readLog,
} from "../../log/reading/index.ts";
import { type Recording, recordLog } from "../../log/recording/index.ts";
import { type AnalysedFlight, analyseRecording, type DayFacts } from "../analysis/index.ts";
import { headline, judgeFlight, type PartMeanings, partMeanings, whyPlanWasOff } from "../judgement/index.ts";
import { altitudeUnitNotices } from "./altitudeUnitNotice.ts";
import { cellCountNotices, fewerFullCells } from "./cellCountNotices.ts";
import type {
  CheckedFlight,
  CheckedLog,
  CheckedLogWithRows,
  FlightCheck,
  ReadingOfLog,
} from "./flightCheck.ts";
import { byExampleNumbers, exampleNotice, ifCellsAreRight } from "./sentences.ts";

export interface CheckRequest {
  /** Name of the log as the user knows it; shown, never opened. */
  readonly file: string;
  /** Hex digest of the bytes, handed in so that the core needs no crypto. */
  readonly sha256: string;
  /** Name of the aircraft, null without one. */
  readonly aircraft: string | null;
  readonly facts: Facts;
  readonly budget: Budget;
  readonly readings: readonly RememberedReading[];
  readonly options: ReadingOptions;
  readonly day: DayFacts;
}

/**
 * The whole main job, drawn once:
 *
 *   bytes -readLog-> ReadLog -recordLog-> Recording -analyseRecording-> AnalysedFlight[] -judge-> FlightCheck
 *
 * A question or a refusal on the way ends it with `flights: []` and the notices that say what to do.
 */
export function checkLog(bytes: LogBytes, request: CheckRequest): CheckedLogWithRows {
  const facts = withStatedCells(request.facts, request.options.cells);
  const outcome = readLog(bytes, withFacts(request.options, facts), request.readings);
  if (outcome.state !== "read") return stopped(request, notReadLog(request, outcome));
  const recording = recordLog(outcome.log, facts.sensors, "inPlace");
  const cellCount = cellCountNotices(recording, facts, request.options.cells !== null);
  if (cellCount.some(({ severity }) => severity === "question")) {
    return stopped(request, checkedLog(request, outcome.log, recording, cellCount));
  }
  const analysed = analyseRecording(recording, facts, request.day);
  let meanings: readonly PartMeanings[] | null = null;
  const examples = examplePartsLeft(facts, request.budget);
  const notices = [
    ...cellCount,
    ...(examples.length === 0 ? [] : [exampleNotice(examples)]),
    ...altitudeUnitNotices(outcome.log.columns, analysed),
    ...analysed.flatMap((flight) => flight.notices),
  ];
  const fewer = fewerFullCells(recording, facts);
  const flights = analysed.map((flight) => checkedFlight(flight, facts, request));
  return {
    check: flightCheck(
      request,
      checkedLog(request, outcome.log, recording, notices),
      flights.map((flight) => onCondition(flight, facts, fewer, examples)),
    ),
    readLog: withoutRows(outcome.log),
    recording,
    analysed,
    // Only a report asks for them.
    get meanings() {
      meanings ??= analysed.map((flight) => partMeanings(flight, facts, request.budget));
      return meanings;
    },
  };
}

function withoutRows(log: ReadLog): ReadingOfLog {
  const { dialect, headerSignature, columns, dataLines, rows, clock, lineOfRow, notices } = log;
  return { dialect, headerSignature, columns, dataLines, rows, clock, lineOfRow, notices };
}

/** A cell count that the user states wins over the aircraft file's: it answers a question about it. */
export function withStatedCells(facts: Facts, cells: number | null): Facts {
  return cells === null ? facts : { ...facts, pack: { ...facts.pack, cells } };
}

function withFacts(options: ReadingOptions, facts: Facts): ReadingOptions {
  return {
    ...options,
    cells: facts.pack.cells,
    capacityMah: facts.pack.capacityMah,
    polePairs: options.polePairs ?? facts.motor.polePairs,
  };
}

function flightCheck(request: CheckRequest, log: CheckedLog, flights: readonly CheckedFlight[]): FlightCheck {
  return { format: "tallywatt/flight-check", version: 1, aircraft: request.aircraft, log, flights };
}

function checkedFlight(
  flight: AnalysedFlight,
  facts: Facts,
  { budget, day }: Pick<CheckRequest, "budget" | "day">,
): CheckedFlight {
  const { kind, startedAt, startS, endS, complete, phases, measures, weakestPart, heatTrace } = flight;
  const judgements = judgeFlight(measures, kind, facts, budget);
  const sentence = headline(measures, kind, complete, judgements);
  return {
    kind,
    startedAt,
    startS,
    endS,
    complete,
    phases,
    measures,
    ...(flight.isChargeDoubtful && { isChargeDoubtful: true }),
    judgements,
    whyOff: whyPlanWasOff({ kind, complete, measures, facts, day }, budget, judgements),
    weakestPart,
    heatTrace,
    headline: sentence,
  };
}

/**
 * A wrong count of cells makes a passed limit of a good flight, another aircraft's limits a good flight of a bad
 * one: the first sentence must name what it rests on.
 */
function onCondition(
  flight: CheckedFlight,
  { pack }: Facts,
  fewer: number | null,
  examples: readonly ExamplePart[],
): CheckedFlight {
  const own = examples.length === 0 ? flight.headline : byExampleNumbers(examples, flight.headline);
  const headline = fewer === null || pack.cells === null ? own : ifCellsAreRight(pack.cells, fewer, own);
  return { ...flight, headline };
}

function checkedLog(
  request: CheckRequest,
  log: ReadLog,
  recording: Recording,
  more: readonly Notice[],
): CheckedLog {
  return {
    ...identity(request),
    rows: recording.dataLines,
    rowsUsed: recording.rowsUsed,
    durationS: recording.durationS,
    holes: recording.holes.length,
    holeS: recording.holes.reduce((sum, hole) => sum + (hole.endS - hole.startS), 0),
    dialect: log.dialect,
    headerSignature: log.headerSignature,
    channels: checkedChannels(log.columns),
    notices: [...recording.notices, ...more],
  };
}

function notReadLog(request: CheckRequest, outcome: NotRead): CheckedLog {
  return {
    ...identity(request),
    rows: outcome.dataLines,
    rowsUsed: 0,
    durationS: 0,
    holes: 0,
    holeS: 0,
    dialect: outcome.dialect,
    headerSignature: outcome.headerSignature,
    channels: checkedChannels(outcome.columns),
    notices: outcome.notices,
  };
}

function stopped(request: CheckRequest, log: CheckedLog): CheckedLogWithRows {
  return { check: flightCheck(request, log, []), readLog: null, recording: null, analysed: [], meanings: [] };
}

function identity(request: CheckRequest): Pick<CheckedLog, "file" | "sha256"> {
  return { file: request.file, sha256: request.sha256 };
}

function checkedChannels(columns: ReadLog["columns"]): CheckedLog["channels"] {
  return columns.flatMap(({ channel, header, column, unit, why }) =>
    channel === null ? [] : [{ channel, header, column, unit: unit ?? "", why }],
  );
}
