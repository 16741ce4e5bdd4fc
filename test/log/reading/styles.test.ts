import { describe, expect, it } from "vitest";
import type { ChannelName } from "../../../src/base/channels/index.ts";
import { NO_READING_OPTIONS, readLog } from "../../../src/log/reading/index.ts";
import {
  LOG_STYLES,
  type LogStyleKey,
  simulateFlight,
  TERN,
  usualSpec,
  writeLog,
} from "../../generator/index.ts";

const CHANNELS = [
  "packVoltage",
  "current",
  "shaftSpeed",
  "controllerTemperature",
  "motorTemperature",
  "packTemperature",
  "ambientTemperature",
  "throttle",
  "altitude",
  "airspeed",
  "groundSpeed",
  "chargeCounter",
] as const;
const CELLS = [1, 2, 3, 4, 5, 6, 7, 8].map((cell) => `cellVoltage${cell}` as const);
/** Largest rounding of a written value, in the channel's unit: half a written digit. */
const ROUNDING: Readonly<Record<string, number>> = { altitude: 0.02, airspeed: 0.02, groundSpeed: 0.02 };

const { logged } = simulateFlight(
  usualSpec(5, TERN, { script: { flightS: 90 }, sensors: { rateHz: 5, channels: [...CHANNELS, ...CELLS] } }),
);

function largestDifference(read: Float64Array, truth: ArrayLike<number>): number {
  return read.reduce((most, value, row) => Math.max(most, Math.abs(value - truth[row]!)), 0);
}

function isWritten(channel: (typeof CHANNELS)[number], key: LogStyleKey): boolean {
  return channel in LOG_STYLES[key].columns || channel === "packVoltage";
}

describe("logs in many header styles", () => {
  it.each(Object.keys(LOG_STYLES) as LogStyleKey[])(
    "%s is read with no option and every channel right",
    (key) => {
      const outcome = readLog(writeLog(logged, LOG_STYLES[key]), NO_READING_OPTIONS, []);
      const texts = (outcome.state === "read" ? outcome.log : outcome).notices.map((notice) => notice.text);
      if (outcome.state !== "read") throw new Error(texts.join("\n"));
      const { log } = outcome;
      expect(log.rows).toBe(logged.rows);
      const expected = CHANNELS.filter((channel) => logged.channels.has(channel) && isWritten(channel, key));
      for (const channel of expected) {
        const read = log.channels.get(channel as ChannelName);
        const why = log.columns.map((each) => `${each.header}: ${each.channel} ${each.why}`).join("\n");
        expect(read, `${channel} is missing\n${why}`).toBeDefined();
        if (channel === "packVoltage" && key === "cellColumns") continue;
        const most = ROUNDING[channel] ?? 1e-6;
        expect(largestDifference(read!, logged.channels.get(channel)!), channel).toBeLessThanOrEqual(most);
      }
      const step = LOG_STYLES[key].clock === "wholeSecondClock" ? 1 : 0.002;
      const times = log.timeS.map((value) => value + logged.timeS[0]!);
      expect(largestDifference(times, logged.timeS)).toBeLessThanOrEqual(step);
    },
  );
});
