import { type Budget, NO_BUDGET } from "../../src/aircraft/budget.ts";
import { type Facts, NO_FACTS } from "../../src/aircraft/facts.ts";
import type { ChannelName } from "../../src/base/channels/index.ts";
import type { Notice } from "../../src/base/notices/index.ts";
import { atLeast, between, known, type Quantity, unknown } from "../../src/base/quantity/index.ts";
import {
  type AnalysedFlight,
  MEASURE_NAMES,
  MEASURE_UNITS,
  type Measures,
  type Phase,
} from "../../src/flight/analysis/index.ts";
import type { CheckedFlight, CheckedLogWithRows } from "../../src/flight/check/index.ts";
import { headline, judgeFlight, partMeanings, whyPlanWasOff } from "../../src/flight/judgement/index.ts";
import type { ColumnChoice } from "../../src/log/reading/index.ts";
import type { Recording } from "../../src/log/recording/index.ts";
import type { FlightReportInput } from "../../src/show/report/index.ts";
import { sampleCells, samplePictures } from "./samplePictures.ts";

/** An invented six-minute flight, made by hand for tests of what is shown. Its numbers are not a model of anything. */
export const SAMPLE_PHASES: readonly Phase[] = [
  { phase: "rest", startS: 0, endS: 20 },
  { phase: "runUp", startS: 20, endS: 29 },
  { phase: "taxi", startS: 29, endS: 52 },
  { phase: "takeOff", startS: 52, endS: 64 },
  { phase: "flight", startS: 64, endS: 330 },
  { phase: "landing", startS: 330, endS: 346 },
  { phase: "after", startS: 346, endS: 372 },
];

export const SAMPLE_FACTS: Facts = {
  ...NO_FACTS,
  name: "Tern",
  flyingMassKg: 7.1,
  pack: {
    ...NO_FACTS.pack,
    cells: 8,
    capacityMah: 5000,
    maxContinuousA: 150,
    minLoadedCellV: 3.3,
    limitC: 60,
  },
  controller: { continuousA: 70, burstA: 80, burstS: 10, limitC: 85, resistanceMohm: 1.5 },
  motor: {
    ...NO_FACTS.motor,
    kv: 230,
    windingOhm: 0.021,
    noLoadA: 1.4,
    maxPowerW: 2000,
    limitC: 100,
    polePairs: 7,
  },
  propeller: { diameterIn: 18, pitchIn: 10, blades: 2, family: "thin electric", maxRpm: 8300 },
};

export const SAMPLE_BUDGET: Budget = {
  ...NO_BUDGET,
  planned: {
    staticCurrentA: 55,
    staticPowerW: 1700,
    staticRpm: 6900,
    meanCurrentA: 24,
    flightTimeS: 360,
    chargeUsedMah: 2600,
    minCellV: 3.5,
    controllerPeakC: 75,
  },
};

const HOLE = { fromS: 180, toS: 194.2 } as const;
const PEAK_S = 58.3;

export interface SampleOptions {
  readonly rows?: number;
  readonly cellChannels?: boolean;
  readonly moreTemperatures?: boolean;
  readonly kind?: "flight" | "benchRun";
  /** Text put into every place that can hold text from outside. */
  readonly text?: string;
}

/** A whole report input built around the invented flight. */
export function sampleInput(options: SampleOptions = {}): FlightReportInput {
  const recording = sampleRecording(options);
  const flight = sampleFlight(recording, options);
  const text = options.text ?? "";
  const facts = { ...SAMPLE_FACTS, name: `Tern${text}` };
  return {
    checked: {
      check: {
        format: "tallywatt/flight-check",
        version: 1,
        aircraft: `Tern${text}`,
        log: {
          file: `flight-03${text}.csv`,
          sha256: "5f0c".repeat(16),
          rows: recording.dataLines,
          rowsUsed: recording.rowsUsed,
          durationS: recording.durationS,
          holes: recording.holes.length,
          holeS: HOLE.toS - HOLE.fromS,
          dialect: { encoding: "utf-8", delimiter: ";", decimalMark: ",", headerLine: 1 },
          headerSignature: "sample",
          channels: sampleColumns(text).flatMap(({ channel, header, column, unit, why }) =>
            channel === null ? [] : [{ channel, header, column, unit: unit ?? "", why }],
          ),
          notices: sampleNotices(text),
        },
        flights: [checkedFlight(flight, facts, text)],
      },
      readLog: sampleReadLog(recording, text),
      recording,
      analysed: [flight],
      meanings: [partMeanings(flight, facts, SAMPLE_BUDGET)],
    },
    facts,
    budget: SAMPLE_BUDGET,
    release: "0.1.0",
  };
}

/** The same log holding two flights, the second one made of the first's rows again. */
export function sampleInputOfTwo(): FlightReportInput {
  const input = sampleInput();
  const [flight] = input.checked.check.flights;
  const [analysed] = input.checked.analysed;
  const [meaning] = input.checked.meanings;
  if (!flight || !analysed || !meaning) throw new Error("the sample holds no flight");
  const check = { ...input.checked.check, flights: [flight, { ...flight, complete: false }] };
  const meanings = [meaning, meaning];
  return { ...input, checked: { ...input.checked, check, analysed: [analysed, analysed], meanings } };
}

/** A log that could not be read: a question, with the options that settle it. */
export function sampleQuestion(): FlightReportInput {
  const input = sampleInput();
  const notices: Notice[] = [
    {
      code: "two-currents",
      severity: "question",
      text: 'Two columns could be the pack current: "I batt" (column 3) and "I mot" (column 4).',
      lines: [1],
      options: ["--column current=#3", "--column current=#4"],
    },
  ];
  const log = { ...input.checked.check.log, notices };
  const checked: CheckedLogWithRows = {
    check: { ...input.checked.check, log, flights: [] },
    readLog: null,
    recording: null,
    analysed: [],
    meanings: [],
  };
  return { ...input, checked };
}

/** Noise from a fixed linear congruential generator (Numerical Recipes constants), -1 to 1. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

function targetA(timeS: number): number {
  if (timeS < 20.5 || timeS > 352) return 0.3;
  if (timeS < 24) return 55;
  if (timeS < 29) return 4;
  if (timeS < 52) return 6 + 2 * Math.sin(timeS);
  if (timeS < 64) return 68;
  if (timeS < 330)
    return 24 + 9 * Math.sin(timeS / 9) + 6 * Math.sin(timeS / 3.1) + (timeS % 71 < 8 ? 22 : 0);
  if (timeS < 346) return 5;
  return 3;
}

export function sampleRecording(options: SampleOptions = {}): Recording {
  const wanted = options.rows ?? 3720;
  const stepS = 372 / wanted;
  const times = Array.from({ length: wanted }, (_, row) => row * stepS).filter(
    (timeS) => timeS <= HOLE.fromS || timeS >= HOLE.toS,
  );
  const rows = times.length;
  const random = noise(20260614);
  const volts = new Float64Array(rows);
  const amps = new Float64Array(rows);
  const revs = new Float64Array(rows);
  const warmth = new Float64Array(rows);
  let usedC = 0;
  let current = 0.3;
  let temperature = 21;
  times.forEach((timeS, row) => {
    const dt = row === 0 ? 0 : timeS - (times[row - 1] ?? 0);
    current += (targetA(timeS) - current) * Math.min(1, dt / 0.6);
    amps[row] = Math.max(0, current * (1 + 0.03 * random()));
    usedC += current * dt;
    volts[row] = 33.4 - usedC / 2600 - 0.042 * current + 0.02 * random();
    revs[row] = current < 1 ? 0 : Math.round(1150 * current ** 0.43 + 20 * random());
    temperature += dt * ((21 - temperature) / 95 + 0.00052 * current ** 2);
    warmth[row] = Math.round(temperature * 2) / 2;
  });
  const peakRow = times.findIndex((timeS) => timeS >= PEAK_S);
  amps[peakRow] = 78.4;
  const spikeRow = times.findIndex((timeS) => timeS >= 120);
  volts[spikeRow] = Number.NaN;
  const silentFrom = times.findIndex((timeS) => timeS >= 250);
  const silentTo = times.findIndex((timeS) => timeS >= 256);
  warmth.fill(Number.NaN, silentFrom, silentTo);
  const channels = new Map<ChannelName, Float64Array>([
    ["packVoltage", volts],
    ["current", amps],
    ["shaftSpeed", revs],
    ["controllerTemperature", warmth],
  ]);
  if (options.cellChannels) {
    for (let cell = 1; cell <= 8; cell++) {
      channels.set(
        `cellVoltage${cell}`,
        volts.map((volt) => volt / 8 - 0.004 * (cell - 4.5) - (cell === 8 ? 0.03 : 0)),
      );
    }
  }
  if (options.moreTemperatures) {
    channels.set(
      "motorTemperature",
      warmth.map((degrees) => 21 + (degrees - 21) * 1.3),
    );
    channels.set(
      "packTemperature",
      warmth.map((degrees) => 22 + (degrees - 21) * 0.4),
    );
    channels.set(
      "ambientTemperature",
      warmth.map((_, row) => 21 + 0.2 * Math.sin(row / 400)),
    );
  }
  const holeRow = times.findIndex((timeS) => timeS >= HOLE.toS);
  return {
    rows,
    dataLines: rows + 3,
    rowsUsed: rows,
    durationS: times.at(-1) ?? 0,
    timeS: Float64Array.from(times),
    channels,
    lineOfRow: (row) => row + 2,
    clockTextOfRow: (row) => clockText(times[row] ?? 0),
    stepS,
    holes: [
      {
        rowBefore: holeRow - 1,
        rowAfter: holeRow,
        startS: times[holeRow - 1] ?? 0,
        endS: times[holeRow] ?? 0,
        isUnknownLength: false,
      },
    ],
    repairs: [
      { channel: "packVoltage", row: spikeRow, line: spikeRow + 2, kind: "spike", value: 12.4 },
      {
        channel: "controllerTemperature",
        row: silentFrom,
        line: silentFrom + 2,
        kind: "impossible",
        value: 655.35,
      },
    ],
    dead: [{ channel: "airspeed", why: "it reads 0 in every row although the motor runs" }],
    notices: [],
  };
}

function clockText(timeS: number): string {
  const whole = Math.floor(timeS);
  return `10:${String(Math.floor(whole / 60)).padStart(2, "0")}:${String(whole % 60).padStart(2, "0")}`;
}

/** Value and time of the largest (or with -1 the smallest) number of a channel. */
function extreme(recording: Recording, values: ArrayLike<number>, sign: 1 | -1, fromS = 0) {
  let best = -1;
  for (let row = 0; row < recording.rows; row++) {
    const value = values[row] ?? Number.NaN;
    if (Number.isNaN(value) || (recording.timeS[row] ?? 0) < fromS) continue;
    if (best < 0 || sign * value > sign * (values[best] ?? 0)) best = row;
  }
  return {
    value: values[best] ?? 0,
    sample: { atS: recording.timeS[best] ?? 0, line: recording.lineOfRow(best) },
  };
}

function peak(recording: Recording, channel: ChannelName, unit: string, share: number): Quantity {
  const values = recording.channels.get(channel);
  if (values === undefined) return unknown(unit, `this log has no ${channel}`);
  const { value, sample } = extreme(recording, values, 1);
  return known(value, value * share, unit, "measured", { sample });
}

function sampleMeasures(recording: Recording, kind: "flight" | "benchRun"): Measures {
  const volts = recording.channels.get("packVoltage") ?? new Float64Array();
  const amps = recording.channels.get("current") ?? new Float64Array();
  const power = extreme(
    recording,
    volts.map((volt, row) => volt * (amps[row] ?? Number.NaN)),
    1,
  );
  const low = extreme(recording, volts, -1, 20);
  const hasCells = recording.channels.has("cellVoltage8");
  const lowCell = extreme(recording, recording.channels.get("cellVoltage8") ?? volts, -1, 20);
  const cellV = hasCells ? lowCell.value : low.value / 8;
  const isFlight = kind === "flight";
  const found: Partial<Record<keyof Measures, Quantity>> = {
    flightTimeS: isFlight
      ? between(278, 266, 291, "s", "estimated", {
          bound: "interval",
          why: "from power alone touchdown cannot be seen",
        })
      : unknown("s", "a bench run does not fly"),
    motorRunTimeS: known(325.4, 0.2, "s", "measured"),
    chargeUsedMah: between(2384, 2301, 2532, "mAh", "derived"),
    energyUsedWh: between(73.1, 70.9, 77.6, "Wh", "derived"),
    chargeCoveredMah: known(2269.4, 46.1, "mAh", "derived"),
    energyCoveredWh: known(69.93, 1.62, "Wh", "derived"),
    flightChargeMah: isFlight
      ? between(2180, 2090, 2310, "mAh", "derived")
      : unknown("mAh", "a bench run does not fly"),
    meanCurrentA: known(27.9, 1.1, "A", "derived"),
    peakCurrentA: peak(recording, "current", "A", 0.02),
    peakPowerW: known(power.value, power.value * 0.021, "W", "derived", { sample: power.sample }),
    overRatingS: known(0.4, 0.1, "s", "derived"),
    longestOverRatingS: known(0.4, 0.1, "s", "derived"),
    staticCurrentA: known(54.8, 1.1, "A", "measured"),
    staticPowerW: known(1708, 36, "W", "derived"),
    staticRpm: known(6410, 20, "rev/min", "measured"),
    peakRpm: peak(recording, "shaftSpeed", "rev/min", 0.003),
    restPackV: known(33.39, 0.17, "V", "measured"),
    minPackV: known(low.value, 0.16, "V", "measured", { sample: low.sample }),
    restCellV: known(4.174, 0.021, "V", "measured"),
    minCellV: known(cellV, 0.02, "V", "measured", { sample: low.sample }),
    sagPerCellV: known(0.41, 0.03, "V", "derived"),
    chargeLeftPct: atLeast(47, 45, "%", "estimated", "the log ends under power"),
    controllerPeakC: peak(recording, "controllerTemperature", "degC", 0.03),
    controllerHotDayPeakC: between(88, 84, 93, "degC", "predicted"),
    motorPeakC: peak(recording, "motorTemperature", "degC", 0.03),
    packPeakC: peak(recording, "packTemperature", "degC", 0.03),
    powerLoadingWPerKg: known(240.6, 5.1, "W/kg", "derived"),
    packResistanceMohm: known(42.5, 2.1, "mohm", "derived"),
    packResistance10sMohm: known(50.1, 2.6, "mohm", "derived"),
    controllerTimeConstantS: between(95, 88, 104, "s", "derived"),
    propellerPowerCoefficient: known(0.041, 0.002, "1", "derived"),
    motorEfficiencyPct: known(88.4, 2.2, "%", "derived"),
    packStartC: known(24, 2, "degC", "measured"),
  };
  const entries = MEASURE_NAMES.map((name) => [
    name,
    found[name] ?? unknown(MEASURE_UNITS[name], "this log is too short for it"),
  ]);
  return Object.fromEntries(entries) as Measures;
}

function sampleFlight(recording: Recording, options: SampleOptions): AnalysedFlight {
  const kind = options.kind ?? "flight";
  return {
    kind,
    startS: 20.4,
    endS: 351.8,
    complete: true,
    startedAt: `2026-06-14T10:00:20${options.text ?? ""}`,
    takeOffS: kind === "flight" ? 52 : null,
    touchdownS: kind === "flight" ? 330 : null,
    phases: SAMPLE_PHASES,
    measures: sampleMeasures(recording, kind),
    load: null,
    weakestPart: options.cellChannels ? sampleCells() : null,
    heatTrace: null,
    pictures: samplePictures(kind),
    notices: [],
    firstRow: 0,
    lastRow: recording.rows - 1,
    windowStartS: 0,
    windowEndS: recording.timeS.at(-1) ?? 0,
  };
}

function checkedFlight(flight: AnalysedFlight, facts: Facts, text: string): CheckedFlight {
  const { kind, startedAt, startS, endS, complete, phases, measures, heatTrace } = flight;
  const judgements = judgeFlight(measures, kind, facts, SAMPLE_BUDGET);
  const line = headline(measures, kind, complete, judgements) + text;
  const bounds = { kind, startedAt, startS, endS, complete, phases };
  const day = { ambientC: null, startPct: null };
  const whyOff = whyPlanWasOff({ kind, complete, measures, facts, day }, SAMPLE_BUDGET, judgements);
  return { ...bounds, measures, judgements, whyOff, heatTrace, headline: line };
}

function sampleColumns(text: string): readonly ColumnChoice[] {
  const column = (
    channel: ColumnChoice["channel"],
    header: string,
    number: number,
    unit: string | null,
    why: string,
  ): ColumnChoice => ({
    channel,
    header: `${header}${text}`,
    column: number,
    unit,
    why: `${why}${text}`,
    options: [],
  });
  return [
    column("time", "Time [s]", 1, "s", "the header says time and seconds, and the values rise"),
    column(
      "packVoltage",
      "Pack voltage measured at the sensor board before the connector [V]",
      2,
      "V",
      "the header says volts, and the values fit 8 cells",
    ),
    column("current", "Amps", 3, "A", "the header says amps"),
    column("shaftSpeed", "1/min", 4, "rev/min", "the unit is a speed, and the values fit a propeller shaft"),
    column("controllerTemperature", "Temp ctrl (°C)", 5, "degC", "the header says controller and degrees"),
    column(null, "Rx strength", 6, null, "no quantity this report uses"),
  ];
}

function sampleReadLog(recording: Recording, text: string): CheckedLogWithRows["readLog"] {
  return {
    dialect: { encoding: "utf-8", delimiter: ";", decimalMark: ",", headerLine: 1 },
    headerSignature: "sample",
    columns: sampleColumns(text),
    dataLines: recording.dataLines,
    rows: recording.rows,
    clock: { kind: "timeOfDay", wrapS: 86_400, resolutionS: 1, textOfRow: recording.clockTextOfRow },
    lineOfRow: recording.lineOfRow,
    notices: [],
  };
}

function sampleNotices(text: string): readonly Notice[] {
  return [
    {
      code: "hole",
      severity: "warning",
      text: `No usable rows for 14.2 s from 3:00.${text}`,
      count: 1,
      lines: [1802],
    },
    {
      code: "values-left-out",
      severity: "note",
      text: `2 values were left out.${text}`,
      count: 2,
      lines: [1202, 2360],
    },
    {
      code: "rows-of-wrong-width",
      severity: "warning",
      text: `3 rows hold a wrong number of cells.${text}`,
      count: 3,
      lines: [410, 411, 988],
    },
  ];
}
