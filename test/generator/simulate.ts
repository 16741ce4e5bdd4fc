import type { TrueAircraft, TrueDay } from "./aircraft.ts";
import { FINE_STEP_S, type FineFlight, type FlightPlan, fly, type PackState } from "./fly.ts";
import { seededRandom } from "./random.ts";
import { benchScript, flightScript, type ScriptOptions, USUAL_SCRIPT } from "./script.ts";
import { type LoggedFlight, type SensorSpec, sense, USUAL_SENSORS } from "./sensors.ts";
import { type AircraftFile, STATED_EXACTLY, type StatedSpec, statedFacts } from "./statedFacts.ts";
import { type FlightTruth, flightTruth } from "./truth.ts";

/** Everything that fixes one simulated log: the same spec gives the same numbers. */
export interface FlightSpec {
  readonly seed: number;
  readonly aircraft: TrueAircraft;
  readonly day: TrueDay;
  readonly pack: PackState;
  /** One entry per sortie in the log; `bench`: a run on the ground. */
  readonly sorties: readonly (ScriptOptions | "bench")[];
  readonly sensors: SensorSpec;
  readonly stated: StatedSpec;
}

export interface SimulatedFlight {
  readonly spec: FlightSpec;
  readonly logged: LoggedFlight;
  readonly truth: FlightTruth;
  readonly facts: AircraftFile;
  /** Air temperature as the pilot would state it, degC. */
  readonly statedAmbientC: number;
}

/** A flight with every part of the spec that is not given taken from the usual. */
export function usualSpec(
  seed: number,
  aircraft: TrueAircraft,
  more: {
    readonly day?: Partial<TrueDay>;
    readonly pack?: Partial<PackState>;
    readonly script?: Partial<ScriptOptions>;
    readonly sensors?: Partial<SensorSpec>;
    readonly stated?: Partial<StatedSpec>;
  } = {},
): FlightSpec {
  return {
    seed,
    aircraft,
    day: { ambientC: 18, elevationM: 120, ...more.day },
    pack: { startCharge: 1, resistanceFactor: 1, temperatureC: 25, ...more.pack },
    sorties: [{ ...USUAL_SCRIPT, ...more.script }],
    sensors: { ...USUAL_SENSORS, ...more.sensors },
    stated: { ...STATED_EXACTLY, ...more.stated },
  };
}

function planOf(spec: FlightSpec): FlightPlan {
  const random = seededRandom(spec.seed).fork("script");
  return {
    aircraft: spec.aircraft,
    day: spec.day,
    pack: spec.pack,
    sorties: spec.sorties.map((sortie) =>
      sortie === "bench" ? benchScript() : flightScript(sortie, spec.aircraft.airframe, random),
    ),
    warmStartK: 1,
  };
}

/** The flight itself, before any sensor: reuse it to log one flight at several rates. */
export function flown(spec: FlightSpec): { readonly plan: FlightPlan; readonly fine: FineFlight } {
  const plan = planOf(spec);
  return { plan, fine: fly(plan) };
}

/** Logs a flight that was flown with the same spec (its sensors may differ). */
export function logFlight(
  spec: FlightSpec,
  { plan, fine }: { readonly plan: FlightPlan; readonly fine: FineFlight },
): SimulatedFlight {
  const random = seededRandom(spec.seed).fork("sensors");
  const logged = sense(fine, spec.aircraft.pack.cells, spec.sensors, random);
  const lastS = logged.timeS[logged.rows - 1] ?? 0;
  const fromS = Math.round(spec.sensors.startS / FINE_STEP_S) * FINE_STEP_S;
  const facts = statedFacts(spec.aircraft, spec.stated, spec.day);
  return {
    spec,
    logged,
    truth: flightTruth(fine, plan, fromS, fromS + lastS),
    facts,
    statedAmbientC: facts.field.ambientC,
  };
}

/** One log with its truth and an aircraft file. */
export function simulateFlight(spec: FlightSpec): SimulatedFlight {
  return logFlight(spec, flown(spec));
}
