import { mahFromCoulombs } from "../../base/quantity/index.ts";
import type { Recording } from "../../log/recording/index.ts";
import type { LogbookEntry } from "./entry.ts";
import { secondsOfDay } from "./startTime.ts";

const PARTS = 8;
/** Another export rounds currents and picks other rows: its curve stays within this share of the charge. */
const SAME_SHARE = 0.004;
const SAME_MAH = 3;
const SAME_RUN_S = 2;
const SAME_CLOCK_S = 3;
const HOUR_S = 3600;

/**
 * Charge, mAh, at the end of each of eight equal parts of the motor's run (trapezoids over the rows that
 * hold current); null without current. Two flights of one pilot do not share it; two exports of one do.
 */
export function chargeFingerprint(
  { timeS, channels, rows }: Recording,
  startS: number,
  endS: number,
): readonly number[] | null {
  const current = channels.get("current");
  if (current === undefined || endS <= startS) return null;
  const chargeC = new Float64Array(PARTS);
  let lastTimeS = Number.NaN;
  let lastA = Number.NaN;
  for (let row = 0; row < rows; row += 1) {
    const at = timeS[row] ?? Number.NaN;
    const amps = current[row] ?? Number.NaN;
    if (Number.isNaN(amps) || at < startS || at > endS) continue;
    if (!Number.isNaN(lastA)) {
      const share = ((lastTimeS + at) / 2 - startS) / (endS - startS);
      chargeC[Math.min(PARTS - 1, Math.floor(PARTS * share))]! += 0.5 * (lastA + amps) * (at - lastTimeS);
    }
    lastTimeS = at;
    lastA = amps;
  }
  return runningSumMah(chargeC);
}

function runningSumMah(chargeC: Float64Array): readonly number[] {
  let total = 0;
  return Array.from(chargeC, (part) => {
    total += part;
    return mahFromCoulombs(total);
  });
}

export type Recognisable = Pick<LogbookEntry, "fingerprint"> & {
  readonly check: Pick<LogbookEntry["check"], "startedAt" | "startS" | "endS">;
};

/** True when both look like one flight written out twice: same charge curve, and clocks that do not disagree. */
export function isSameFlight(one: Recognisable, other: Recognisable): boolean {
  const [first, second] = [one.fingerprint, other.fingerprint];
  if (first === null || second === null || first.length !== second.length) return false;
  const runS = (entry: Recognisable): number => entry.check.endS - entry.check.startS;
  if (Math.abs(runS(one) - runS(other)) > SAME_RUN_S || !isSameClock(one, other)) return false;
  const allowedMah = Math.max(SAME_MAH, SAME_SHARE * (first.at(-1) ?? 0));
  return first.every((mah, part) => Math.abs(mah - (second[part] ?? Number.NaN)) <= allowedMah);
}

/** Minutes and seconds alike: another export may write another time zone. */
function isSameClock(one: Recognisable, other: Recognisable): boolean {
  const first = secondsOfDay(one.check.startedAt);
  const second = secondsOfDay(other.check.startedAt);
  if (first === null || second === null) return true;
  const apart = Math.abs(first - second) % HOUR_S;
  return Math.min(apart, HOUR_S - apart) <= SAME_CLOCK_S;
}
