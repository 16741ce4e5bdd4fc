import {
  ALL_DEPARTURES,
  type RandomFlightOptions,
  seededRandom,
  USUAL_CHANNELS,
} from "../generator/index.ts";

/** Each departure alone, all of them, a random choice, and logs without a speed sensor. */
export const CASES: Readonly<Record<string, (seed: number) => RandomFlightOptions>> = {
  "no departure": () => ({}),
  "slow current sensor": () => ({ departures: { slowCurrentSensor: true } }),
  "fast pack part": () => ({ departures: { fastPackPart: true } }),
  "slow probe": () => ({ departures: { slowProbe: true } }),
  "heat by motor current": () => ({ departures: { heatByMotorCurrent: true } }),
  "constants off": () => ({ departures: { constantsOff: true } }),
  "random choice": (seed) => {
    const random = seededRandom(seed).fork("departures");
    return {
      departures: {
        slowCurrentSensor: random.chance(0.5),
        fastPackPart: random.chance(0.5),
        slowProbe: random.chance(0.5),
        heatByMotorCurrent: random.chance(0.5),
        constantsOff: random.chance(0.5),
      },
    };
  },
  "all together": () => ({ departures: ALL_DEPARTURES }),
  "air stated 2 degC off (1 sd)": (seed) => ({
    stated: { ambientErrorC: 2 * seededRandom(seed).fork("air").normal() },
  }),
  "no speed sensor": () => ({
    departures: { heatByMotorCurrent: true },
    channels: USUAL_CHANNELS.filter((channel) => channel !== "shaftSpeed"),
  }),
};
