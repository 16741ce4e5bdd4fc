import { describe, expect, it } from "vitest";
import {
  type FlightSpec,
  flown,
  LOG_STYLES,
  type LoggedChannel,
  type LogStyleKey,
  logFlight,
  NAMED_AIRCRAFT,
  type SimulatedFlight,
  type TrueAircraft,
  usualSpec,
  writeLog,
} from "../generator/index.ts";
import { checkBytes, stoppedBy } from "./checkSimulated.ts";
import { gap } from "./gap.ts";

const RATES_HZ = [1, 5, 10, 50] as const;
const STYLES = Object.keys(LOG_STYLES) as LogStyleKey[];
const SEED = 4100;

/** Shorter flights at 50 rows a second keep the suite quick. */
function flightOf(aircraft: TrueAircraft, rateHz: number, place: number): FlightSpec {
  return usualSpec(SEED + 10 * place + (rateHz === 50 ? 1 : 0), aircraft, {
    script: {
      flightS: rateHz === 50 ? 60 : 210,
      lowPass: rateHz !== 50,
      touchAndGo: rateHz === 5,
      closesThrottleToLand: place % 3 !== 2,
    },
  });
}

/** Altitude and airspeed on every second log; the others see power alone. */
function channelsOf(aircraft: TrueAircraft, key: LogStyleKey, seesAir: boolean): LoggedChannel[] {
  const cells = Array.from(
    { length: aircraft.pack.cells },
    (_, cell): LoggedChannel => `cellVoltage${cell + 1}`,
  );
  const volts: LoggedChannel[] = key === "cellColumns" ? cells : ["packVoltage"];
  const air: LoggedChannel[] = seesAir ? ["altitude", "airspeed"] : [];
  return [...volts, "current", "shaftSpeed", "controllerTemperature", "throttle", ...air];
}

/** Lowest pack volts at the logged rows while the motor runs, before noise and rounding. */
function lowestAtRows({ logged, truth }: SimulatedFlight): number {
  const { startS, endS } = truth.sorties[0]!;
  let lowest = Number.POSITIVE_INFINITY;
  logged.exactPackV.forEach((volts, row) => {
    const timeS = logged.timeS[row]!;
    if (timeS >= startS && timeS <= endS) lowest = Math.min(lowest, volts);
  });
  return lowest;
}

function misses(simulated: SimulatedFlight, key: LogStyleKey, rateHz: number, seesAir: boolean): string[] {
  const { logged, facts, truth, statedAmbientC } = simulated;
  const bytes = writeLog(logged, LOG_STYLES[key]);
  const checked = checkBytes(bytes, JSON.stringify(facts), statedAmbientC);
  const stopped = stoppedBy(checked);
  if (stopped !== "") return [stopped];
  if (checked.flights.length !== 1) return [`${checked.flights.length} flights instead of 1`];
  const { measures, kind, complete } = checked.flights[0]!;
  const flight = truth.sorties[0]!;
  const share = rateHz >= 5 ? 0.005 : 0.015;
  const { cells } = simulated.spec.aircraft.pack;
  return [
    ...(kind === "flight" && complete ? [] : [`kind ${kind}, complete ${complete}`]),
    ...(checked.log.rows === logged.rows ? [] : [`${checked.log.rows} rows of ${logged.rows}`]),
    ...gap("chargeUsedMah", measures.chargeUsedMah, flight.chargeUsedMah, share * flight.chargeUsedMah),
    ...gap("energyUsedWh", measures.energyUsedWh, flight.energyUsedWh, share * flight.energyUsedWh),
    ...gap("controllerPeakC", measures.controllerPeakC, flight.controllerPeakC, 1 + 0.5),
    ...gap("restCellV", measures.restCellV, flight.restCellV, 0.03),
    ...gap("minCellV", measures.minCellV, lowestAtRows(simulated) / cells, 0.03),
    ...gap("flightTimeS", measures.flightTimeS, flight.flightTimeS, seesAir ? 5 : 15),
  ];
}

describe.each(NAMED_AIRCRAFT.map((aircraft, place) => ({ aircraft, place, name: aircraft.name })))(
  "gains exact: $name",
  ({ aircraft, place }) => {
    const kept = new Map<string, ReturnType<typeof flown>>();
    const flownOnce = (rateHz: number) => {
      const spec = flightOf(aircraft, rateHz, place);
      const key = JSON.stringify(spec.sorties);
      const flight = kept.get(key) ?? flown(spec);
      kept.set(key, flight);
      return flight;
    };

    it.each(RATES_HZ)("every style at %s rows a second", (rateHz) => {
      const failures = STYLES.flatMap((key, index) => {
        const seesAir = (index + place + RATES_HZ.indexOf(rateHz)) % 2 === 0;
        const spec = flightOf(aircraft, rateHz, place);
        const sensors = { ...spec.sensors, rateHz, channels: channelsOf(aircraft, key, seesAir) };
        const simulated = logFlight({ ...spec, sensors }, flownOnce(rateHz));
        const label = `${key}, ${seesAir ? "altitude and airspeed" : "power alone"}, seed ${spec.seed}`;
        return misses(simulated, key, rateHz, seesAir).map((miss) => `${label}: ${miss}`);
      });
      expect(failures).toEqual([]);
    });
  },
);
