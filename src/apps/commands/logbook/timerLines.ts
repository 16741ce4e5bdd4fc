import { minutesAndSeconds } from "../../../base/quantity/index.ts";
import type { CurrentCalibration } from "../../../season/logbook/index.ts";
import { reckonedFor, type TimerSetting } from "../../../season/timer/index.ts";
import { oneLine } from "../printable.ts";
import { calibrationLine } from "./calibrationLine.ts";

/** The timer for the terminal, at most eight lines; every number comes from the setting. */
export function timerLines(setting: TimerSetting, calibration: CurrentCalibration | null): readonly string[] {
  return [
    setting.text,
    ...limitLine(setting),
    ...airLine(setting),
    ...cautiousLine(setting),
    ...oneMoreLine(setting),
    ...leftOutLine(setting),
    ...(calibration?.isApplied ? [calibrationLine(calibration) ?? ""] : []),
    ...(setting.timerS === null ? [] : ["Each part of the sum is in --json under explained."]),
  ].map(oneLine);
}

/** Without a timer the sentence says what is in its way. */
function limitLine({ limits, timerS }: TimerSetting): readonly string[] {
  if (limits.length === 0 || timerS === null) return [];
  const words = limits.map(({ by, touchdownByS, why }) =>
    touchdownByS === null ? `${by} ${why}` : `${by} ${minutesAndSeconds(touchdownByS)}`,
  );
  return [`Touchdown by: ${words.join("; ")}; the timer is rounded down to 10 s.`];
}

function airLine({ timerS, binding, limits, ambientC, isHotDay }: TimerSetting): readonly string[] {
  if (timerS === null) return [];
  const decisive = limits.find(({ by }) => by === binding)?.flights ?? [];
  return [reckonedFor(ambientC, isHotDay, decisive)];
}

function cautiousLine({ cautiousTimerS }: TimerSetting): readonly string[] {
  if (cautiousTimerS === null) return [];
  return [
    `Cautious timer, sure to 95 % that 19 of 20 flights keep the reserve: ${minutesAndSeconds(cautiousTimerS)}.`,
  ];
}

function oneMoreLine({ oneMoreFlightS }: TimerSetting): readonly string[] {
  if (oneMoreFlightS === null || !(oneMoreFlightS >= 1)) return [];
  return [`One more flight like these would add about ${Math.round(oneMoreFlightS)} s.`];
}

/** The reasons, each once, with how many flights it is about. */
function leftOutLine({ leftOut }: TimerSetting): readonly string[] {
  if (leftOut.length === 0) return [];
  const flightsBy = new Map<string, string[]>();
  for (const { flight, why } of leftOut) flightsBy.set(why, [...(flightsBy.get(why) ?? []), flight]);
  const parts = [...flightsBy].map(([why, flights]) =>
    flights.length === 1 ? `${flights[0]} (${why})` : `${flights.length} flights (${why})`,
  );
  return [`Left out: ${parts.join("; ")}.`];
}
