import type { Notice } from "../../base/notices/index.ts";
import { type ChannelName, channelWords } from "../../base/channels/index.ts";
import { minutesAndSeconds } from "../../base/quantity/index.ts";

export function noChannel(channel: ChannelName): string {
  return `no ${channelWords(channel)} channel in this log`;
}

export const NOTHING_RUNS = "the motor never runs in this log";
export const NO_RUNNING_CHANNEL = "neither current nor shaft speed is logged, so motor running cannot be told";
export const BENCH_RUN = "this is a bench run: the log holds no sustained flight power";
export const STARTS_UNDER_POWER = "the log starts under power";
export const ENDS_UNDER_POWER = "the log ends under power";
export const TAKE_OFF_BEFORE_LOG = "the log starts after take-off";
export const LOG_ENDS_IN_FLIGHT = "the log ends before touchdown";
export const TOUCHDOWN_FROM_POWER =
  "touchdown cannot be seen from power alone: it lies between the end of flight power and the end of motor running";

export function startsUnderPower(line: number, isAfterHole: boolean): Notice {
  const where = isAfterHole ? "After the hole the log" : "The log";
  return {
    code: "starts-under-power",
    severity: "warning",
    text: `${where} starts under power at line ${line}: what was used before is not known, so charge and energy are lower bounds.`,
    lines: [line],
  };
}

export function endsUnderPower(line: number, isAtHole: boolean): Notice {
  const where = isAtHole ? "Before the hole the log" : "The log";
  return {
    code: "ends-under-power",
    severity: "warning",
    text: `${where} ends under power at line ${line}: what was used after is not known, so charge and energy are lower bounds.`,
    lines: [line],
  };
}

export function pauseBridged(pauseS: number, lineBefore: number, lineAfter: number): Notice {
  return {
    code: "pause-bridged",
    severity: "note",
    text: `The motor rests for ${minutesAndSeconds(pauseS)} between lines ${lineBefore} and ${lineAfter}; the pack volts did not jump, so this counts as one flight.`,
    lines: [lineBefore, lineAfter],
  };
}
