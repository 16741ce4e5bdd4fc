import { FINE_STEP_S, type FineFlight } from "./fly.ts";
import type { Random } from "./random.ts";

export type LoggedChannel =
  | "packVoltage"
  | "current"
  | "shaftSpeed"
  | "controllerTemperature"
  | "motorTemperature"
  | "packTemperature"
  | "ambientTemperature"
  | "throttle"
  | "altitude"
  | "airspeed"
  | "groundSpeed"
  | "chargeCounter"
  | `cellVoltage${number}`;

export interface DropOut {
  readonly startS: number;
  readonly lengthS: number;
  /** `rows`: lines are missing; `blank`: lines are there, sensor cells are empty. */
  readonly kind: "rows" | "blank";
}

/** What lies between the aircraft and the file. Every departure stands alone. */
export interface SensorSpec {
  readonly rateHz: number;
  readonly channels: readonly LoggedChannel[];
  /** Smallest step written; 0: full precision. */
  readonly voltStep: number;
  readonly ampStep: number;
  readonly temperatureStepC: number;
  readonly rpmStep: number;
  /** Logged over true: constant for the flight. */
  readonly voltGain: number;
  readonly ampGain: number;
  /** Added to the logged amps, A. */
  readonly ampOffset: number;
  readonly temperatureOffsetC: number;
  /** Seconds by which a channel tells the past. */
  readonly voltDelayS: number;
  readonly ampDelayS: number;
  readonly rpmDelayS: number;
  /** One-pole low pass of the current sensor, s; 0: none. */
  readonly ampFilterS: number;
  /** Lag of the controller's temperature probe, s; 0: none. */
  readonly probeLagS: number;
  /** Temperatures change only this often, s; 0: every row. */
  readonly temperatureHoldS: number;
  /** 1 sd. */
  readonly voltNoise: number;
  readonly ampNoise: number;
  readonly rpmNoise: number;
  /** Logged speed over shaft speed: a wrong blade or pole setting. */
  readonly speedFactor: number;
  readonly dropOuts: readonly DropOut[];
  /** The log holds only this part of the flight, s. */
  readonly startS: number;
  readonly endS: number;
  /** Weight of each cell's resistance for cell columns, mean 1; null: alike. */
  readonly cellWeights: readonly number[] | null;
}

export const USUAL_CHANNELS: readonly LoggedChannel[] = [
  "packVoltage",
  "current",
  "shaftSpeed",
  "controllerTemperature",
  "throttle",
  "altitude",
  "airspeed",
];

export const USUAL_SENSORS: SensorSpec = {
  rateHz: 10,
  channels: USUAL_CHANNELS,
  voltStep: 0.01,
  ampStep: 0.1,
  temperatureStepC: 1,
  rpmStep: 10,
  voltGain: 1,
  ampGain: 1,
  ampOffset: 0,
  temperatureOffsetC: 0,
  voltDelayS: 0,
  ampDelayS: 0,
  rpmDelayS: 0,
  ampFilterS: 0,
  probeLagS: 0,
  temperatureHoldS: 0,
  voltNoise: 0.01,
  ampNoise: 0.1,
  rpmNoise: 10,
  speedFactor: 1,
  dropOuts: [],
  startS: 0,
  endS: Number.POSITIVE_INFINITY,
  cellWeights: null,
};

/** Rows as a logger would have them; channel arrays have `rows` entries, NaN where the cell is empty. */
export interface LoggedFlight {
  readonly rows: number;
  /** Since the first row, s. */
  readonly timeS: Float64Array;
  readonly channels: ReadonlyMap<LoggedChannel, Float64Array>;
  /** Step of each channel as written, in its unit; 0: full precision. */
  readonly steps: ReadonlyMap<LoggedChannel, number>;
  /** True pack volts and amps at the rows (gain, delay and filter of the sensor in, noise and rounding out). */
  readonly exactPackV: Float64Array;
  readonly exactCurrentA: Float64Array;
  /** Probe's temperature at the rows before rounding and offset. */
  readonly exactControllerC: Float64Array;
}

/** Value of a fine channel at any time, linear between steps, held at both ends. */
function at(values: Float64Array, timeS: number): number {
  const place = Math.max(0, Math.min(values.length - 1, timeS / FINE_STEP_S));
  const left = Math.min(values.length - 2, Math.floor(place + 1e-9));
  return values[left]! + (values[left + 1]! - values[left]!) * (place - left);
}

function lowPass(values: Float64Array, timeConstantS: number): Float64Array {
  if (timeConstantS <= 0) return values;
  const keep = Math.exp(-FINE_STEP_S / timeConstantS);
  const out = new Float64Array(values.length);
  let state = values[0] ?? 0;
  for (let step = 0; step < values.length; step += 1) {
    state = values[step]! + (state - values[step]!) * keep;
    out[step] = state;
  }
  return out;
}

function rounded(value: number, step: number): number {
  return step > 0 ? Math.round(value / step) * step : value;
}

function rowTimes(flight: FineFlight, spec: SensorSpec): Float64Array {
  const lastS = Math.min(spec.endS, (flight.steps - 1) * FINE_STEP_S);
  const count = Math.floor((lastS - spec.startS) * spec.rateHz + 1e-9) + 1;
  const times: number[] = [];
  for (let row = 0; row < count; row += 1) {
    const timeS = spec.startS + row / spec.rateHz;
    const isLost = spec.dropOuts.some(
      (hole) => hole.kind === "rows" && timeS > hole.startS && timeS < hole.startS + hole.lengthS,
    );
    if (!isLost) times.push(timeS);
  }
  return Float64Array.from(times);
}

/** Samples a flight as its sensors would. Deterministic for one `random`. */
export function sense(flight: FineFlight, cells: number, spec: SensorSpec, random: Random): LoggedFlight {
  const times = rowTimes(flight, spec);
  const startS = times[0] ?? 0;
  const filteredA = lowPass(flight.packA, spec.ampFilterS);
  const probeC = lowPass(flight.controllerC, spec.probeLagS);
  const channels = new Map<LoggedChannel, Float64Array>();
  const steps = new Map<LoggedChannel, number>();
  const add = (channel: LoggedChannel, step: number, value: (timeS: number) => number) => {
    if (!spec.channels.includes(channel)) return;
    channels.set(
      channel,
      times.map((timeS) => rounded(value(timeS), step)),
    );
    steps.set(channel, step);
  };
  const noise = (purpose: string) => random.fork(purpose).normal;
  const packV = (timeS: number) => spec.voltGain * at(flight.packV, timeS - spec.voltDelayS);
  const currentA = (timeS: number) => spec.ampGain * at(filteredA, timeS - spec.ampDelayS) + spec.ampOffset;
  const held = (timeS: number) =>
    spec.temperatureHoldS > 0
      ? Math.floor(timeS / spec.temperatureHoldS + 1e-9) * spec.temperatureHoldS
      : timeS;

  const voltNoise = noise("volts");
  add("packVoltage", spec.voltStep, (timeS) => packV(timeS) + spec.voltNoise * voltNoise());
  for (let cell = 1; cell <= cells; cell += 1) {
    const weight = (spec.cellWeights?.[cell - 1] ?? 1) - 1;
    const own = noise(`cell ${cell}`);
    add(`cellVoltage${cell}`, 0.001, (timeS) => {
      const sag =
        (at(flight.openV, timeS - spec.voltDelayS) - at(flight.packV, timeS - spec.voltDelayS)) / cells;
      return packV(timeS) / cells - weight * sag + (spec.voltNoise / cells) * own();
    });
  }
  const ampNoise = noise("amps");
  add("current", spec.ampStep, (timeS) => currentA(timeS) + spec.ampNoise * ampNoise());
  const rpmNoise = noise("speed");
  add("shaftSpeed", spec.rpmStep, (timeS) => {
    const rpm = at(flight.rpm, timeS - spec.rpmDelayS);
    return rpm < 50 ? 0 : Math.max(0, spec.speedFactor * (rpm + spec.rpmNoise * rpmNoise()));
  });
  add(
    "controllerTemperature",
    spec.temperatureStepC,
    (timeS) => at(probeC, held(timeS)) + spec.temperatureOffsetC,
  );
  add("motorTemperature", spec.temperatureStepC, (timeS) => at(flight.motorC, held(timeS)));
  add("packTemperature", spec.temperatureStepC, (timeS) => at(flight.packC, held(timeS)));
  add("throttle", 1, (timeS) => 100 * at(flight.duty, timeS));
  const altitudeNoise = noise("altitude");
  const driftM = random.fork("drift").between(-1.5, 1.5);
  const endS = times[times.length - 1] ?? 1;
  add(
    "altitude",
    0.1,
    (timeS) => at(flight.altitudeM, timeS) + 0.25 * altitudeNoise() + (driftM * timeS) / endS,
  );
  const speedNoise = noise("airspeed");
  add("airspeed", 0.1, (timeS) => Math.max(0, at(flight.speedMS, timeS) + 0.4 * speedNoise()));
  addGroundSpeed(add, flight, random);
  addCounter(add, flight, spec, startS, currentA);
  blankOut(channels, times, spec);
  return {
    rows: times.length,
    timeS: times.map((timeS) => timeS - startS),
    channels,
    steps,
    exactPackV: times.map(packV),
    exactCurrentA: times.map(currentA),
    exactControllerC: times.map((timeS) => at(probeC, held(timeS))),
  };
}

type AddChannel = (channel: LoggedChannel, step: number, value: (timeS: number) => number) => void;

/** Airspeed and a wind that the circuits turn through. */
function addGroundSpeed(add: AddChannel, flight: FineFlight, random: Random): void {
  const windMS = random.fork("wind").between(0, 4);
  const turnS = random.fork("wind").between(24, 40);
  const speedNoise = random.fork("ground speed").normal;
  add("groundSpeed", 0.1, (timeS) => {
    const isUp = at(flight.altitudeM, timeS) > 0.5;
    const wind = isUp ? windMS * Math.cos((2 * Math.PI * timeS) / turnS) : 0;
    return Math.max(0, at(flight.speedMS, timeS) + wind + 0.1 * speedNoise());
  });
}

function addCounter(
  add: AddChannel,
  flight: FineFlight,
  spec: SensorSpec,
  startS: number,
  currentA: (timeS: number) => number,
): void {
  const usedMah = new Float64Array(flight.steps);
  for (let step = 1; step < flight.steps; step += 1) {
    const timeS = step * FINE_STEP_S;
    const amps = timeS > startS ? Math.max(0, currentA(timeS)) : 0;
    usedMah[step] = usedMah[step - 1]! + (amps * FINE_STEP_S) / 3.6;
  }
  if (spec.channels.includes("chargeCounter")) add("chargeCounter", 1, (timeS) => at(usedMah, timeS));
}

function blankOut(
  channels: ReadonlyMap<LoggedChannel, Float64Array>,
  times: Float64Array,
  spec: SensorSpec,
): void {
  for (const hole of spec.dropOuts) {
    if (hole.kind !== "blank") continue;
    times.forEach((timeS, row) => {
      if (timeS <= hole.startS || timeS >= hole.startS + hole.lengthS) return;
      for (const [channel, values] of channels) if (channel !== "throttle") values[row] = Number.NaN;
    });
  }
}
