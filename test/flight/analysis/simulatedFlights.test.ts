import { describe, expect, test } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import {
  flown,
  logFlight,
  NAMED_AIRCRAFT,
  seededRandom,
  USUAL_SENSORS,
  usualSpec,
} from "../../generator/index.ts";
import { recordingOf } from "../../support/recordingOf.ts";

const VARIANTS = [
  { name: "altitude", channels: ["packVoltage", "current", "altitude"], limitS: 5 },
  { name: "airspeed", channels: ["packVoltage", "current", "airspeed"], limitS: 5 },
  { name: "ground speed", channels: ["packVoltage", "current", "groundSpeed"], limitS: 5 },
  { name: "power and shaft speed", channels: ["packVoltage", "current", "shaftSpeed"], limitS: 15 },
  { name: "power alone", channels: ["packVoltage", "current"], limitS: 15 },
] as const;
const SEED = 7100;

describe.each(NAMED_AIRCRAFT)("flight time of $name (seed 7100)", (aircraft) => {
  const random = seededRandom(SEED);
  const script = {
    taxiOutS: random.between(10, 35),
    taxiBackS: random.between(10, 50),
    approachS: random.between(12, 25),
    flightS: 200,
    closesThrottleToLand: random.chance(0.5),
  };
  const spec = usualSpec(SEED, aircraft, { script });
  const flight = flown(spec);

  test.each(VARIANTS)("from $name within $limitS s, its interval holds the truth", ({ channels, limitS }) => {
    for (const rateHz of [1, 5, 10]) {
      const simulated = logFlight({ ...spec, sensors: { ...USUAL_SENSORS, rateHz, channels } }, flight);
      const recording = recordingOf({
        timeS: simulated.logged.timeS,
        channels: simulated.logged.channels as ReadonlyMap<ChannelName, Float64Array>,
      });
      const [found, ...others] = analyseRecording(recording, NO_FACTS, { ambientC: null, startPct: null });
      const truth = simulated.truth.sorties[0]!;
      expect(others).toEqual([]);
      const { value, low, high } = found!.measures.flightTimeS as {
        value: number;
        low: number;
        high: number;
      };
      expect(Math.abs(value - truth.flightTimeS!), `${rateHz} rows a second`).toBeLessThan(limitS);
      expect(low).toBeLessThanOrEqual(truth.flightTimeS!);
      expect(high).toBeGreaterThanOrEqual(truth.flightTimeS!);
      expect(Math.abs(found!.startS - truth.startS)).toBeLessThan(1);
      expect(Math.abs(found!.endS - truth.endS)).toBeLessThan(1);
      expect(found!.load?.meanSquareCurrentA2).toBeGreaterThan(0);
    }
  });
});
