import type { Notice } from "../../base/notices/index.ts";
import { plainNumber } from "../../base/quantity/index.ts";
import type { ChannelChoices, ChosenChannel } from "./chooseChannels.ts";
import * as say from "./sentences.ts";

/** A motor that turns a propeller of this trade draws more, A (common practice, no published source). */
const LEAST_PEAK_A = 0.5;
/** Nor does one draw less than this at the most it gives in a log, nor more, A. */
const USUAL_PEAK_A: readonly [number, number] = [2, 400];
const TURNING_RPM = 1000;
const OPEN_PCT = 50;

/**
 * Milliamperes by the header that are far too few for a motor which turns, or that are written with decimals as amperes
 * are: probably amperes.
 */
export function faintCurrentQuestions({ chosen }: ChannelChoices): readonly Notice[] {
  const current = chosen.find(({ channel }) => channel === "current");
  if (current === undefined || current.unit.factor >= 1) return [];
  const { range, header, at } = current.view;
  const peakA = range.high99 * current.unit.factor;
  const isAmperes = range.high99 >= USUAL_PEAK_A[0] && range.high99 <= USUAL_PEAK_A[1];
  if (range.isDead || peakA >= LEAST_PEAK_A || !isAmperes) return [];
  if (range.isWhole && !runs(chosen)) return [];
  return [
    {
      code: "unit-unclear",
      severity: "question",
      text: say.faintCurrent(say.columnName(header, at), current.unit.name, plainNumber(peakA)),
      options: ["--unit current=A", `--unit current=${current.unit.name}`],
    },
  ];
}

/** True where shaft speed or throttle say that the motor turns a propeller. */
function runs(chosen: readonly ChosenChannel[]): boolean {
  return chosen.some(({ channel, view, unit }) => {
    const high = view.range.high99 * unit.factor + unit.offset;
    return (channel === "shaftSpeed" && high > TURNING_RPM) || (channel === "throttle" && high > OPEN_PCT);
  });
}
