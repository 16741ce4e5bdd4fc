import { type ChannelName, channelFacts, channelWords } from "../../base/channels/index.ts";
import { linesText } from "../../base/notices/index.ts";
import { lengthInWords, plainNumber, unitText } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import type { ClockFacts } from "../reading/index.ts";
import type { Repair } from "./recording.ts";
import { FASTEST_K_PER_S } from "./temperatureJumps.ts";

/** Values and seconds listed in one sentence; the notice and the list of repairs hold the rest. */
const SHOWN = 3;

function rowsText(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}

/** "20.2 s", from 100 s on as "2:05 min". */
function secondsText(seconds: number): string {
  return seconds < 100 ? `${plainNumber(Number(cellText(seconds)))} s` : lengthInWords(seconds);
}

function listText(texts: readonly string[], count: number): string {
  const shown = texts.slice(0, count > SHOWN ? SHOWN - 1 : SHOWN);
  const more = count - shown.length;
  return more > 0 ? `${shown.join(", ")} and ${more} more` : shown.join(", ");
}

/** A cell as the log shows it, without the last digits of a unit conversion. */
function cellText(value: number): string {
  return String(Number(value.toPrecision(6)));
}

export function timeMissing(count: number, lines: readonly number[]): string {
  return `${rowsText(count)} left out because the time cannot be read (${linesText(lines, count)}).`;
}

export function clockWrapped(kind: ClockFacts["kind"], lines: readonly number[]): string {
  const what = kind === "timeOfDay" ? "The clock passes midnight" : "The time counter wraps round to zero";
  return `${what} at ${linesText(lines)}: time is counted on.`;
}

export function timeWentBack(seconds: readonly number[], lines: readonly number[]): string {
  const by = listText(seconds.map(secondsText), seconds.length);
  return `Time went back by ${by} at ${linesText(lines, seconds.length)}. It is counted on by one usual step there.`;
}

export function timeJumped(lines: readonly number[]): string {
  return `Time jumps forward by more than an hour at ${linesText(lines)}: a gap of unknown length, perhaps a clock that was set.`;
}

export function rowsOutOfOrder(count: number, lines: readonly number[]): string {
  return `${rowsText(count)} out of order, sorted by time (${linesText(lines, count)}).`;
}

export function timeDamaged(count: number, lines: readonly number[]): string {
  return `${rowsText(count)} left out: the time there does not fit the rows before and after (${linesText(lines, count)}).`;
}

export function duplicateRows(count: number, lines: readonly number[]): string {
  return `${count} duplicate ${count === 1 ? "row" : "rows"} left out, each counted once (${linesText(lines, count)}).`;
}

export function clockStoodStill(seconds: readonly number[], lines: readonly number[]): string {
  const lost = listText(seconds.map(secondsText), seconds.length);
  return `The clock stands still from ${linesText(lines, seconds.length)} and loses ${lost}; rows there are counted on by the usual step.`;
}

export function severalRowsPerStamp(_count: number, line: number): string {
  return `Several rows carry the same time (first at line ${line}): they are spread evenly up to the next time.`;
}

export function sameStamps(count: number, line: number): string {
  return `${rowsText(count)} with the time of the row before (first at line ${line}), spread evenly up to the next time.`;
}

export function gap(holes: readonly { seconds: number; lineBefore: number; lineAfter: number }[]): string {
  const texts = holes.map(
    (hole) => `${secondsText(hole.seconds)} between lines ${hole.lineBefore} and ${hole.lineAfter}`,
  );
  const what = holes.length === 1 ? "A gap" : `${holes.length} gaps`;
  return `${what}: ${listText(texts, texts.length)}. Sums over the logged rows leave it out.`;
}

export function gapOfUnknownLength(lineBefore: number, lineAfter: number): string {
  return `A gap of unknown length between lines ${lineBefore} and ${lineAfter}. Sums leave it out, and a flight ends there.`;
}

export function masked(
  kind: Repair["kind"],
  channel: ChannelName,
  cells: readonly { value: number; line: number }[],
): string {
  const { unit } = channelFacts(channel);
  const texts = cells.map((cell) => `${cellText(cell.value)} ${unitText(unit)} at line ${cell.line}`);
  const what = cells.length === 1 ? "1 spike" : `${cells.length} spikes`;
  return `${what} in ${channelWords(channel)} left out: ${listText(texts, texts.length)}. ${maskedBecause(kind, channel)}`;
}

function maskedBecause(kind: Repair["kind"], channel: ChannelName): string {
  if (kind === "spike") return "No neighbour and no other channel confirms it.";
  if (kind === "jump") return `No part warms or cools faster than ${FASTEST_K_PER_S} °C a second.`;
  const { unit, possible } = channelFacts(channel);
  const range = `${plainNumber(possible[0])} to ${plainNumber(possible[1])} ${unitText(unit)}`;
  return `Believable are ${range}.`;
}

export function probeJumped(
  channel: ChannelName,
  jump: { beforeC: number; afterC: number; jumpLine: number; firstLine: number; lastLine: number },
): string {
  const step = `from ${cellText(jump.beforeC)} to ${cellText(jump.afterC)} °C at line ${jump.jumpLine}`;
  const what = jump.firstLine < jump.jumpLine ? "its probe had not read before" : "its probe failed";
  return `${capital(channelWords(channel))} jumps ${step} and does not come back: ${what}. Lines ${jump.firstLine} to ${jump.lastLine} count as missing. Check its plug and leads.`;
}

export function probeStuck(
  channel: ChannelName,
  stretch: { valueC: number; seconds: number; firstLine: number; lastLine: number },
): string {
  const { valueC, seconds, firstLine, lastLine } = stretch;
  return `${capital(channelWords(channel))} reads ${cellText(valueC)} °C for ${secondsText(seconds)} (lines ${firstLine} to ${lastLine}) while the load changes: its probe is stuck. Those rows count as missing.`;
}

export function deadWhile(channel: ChannelName, value: number, sign: string): string {
  const reading = `${cellText(value)} ${unitText(channelFacts(channel).unit)}`;
  return `the ${channelWords(channel)} sensor is dead: it reads ${reading} in every row while ${sign}`;
}

export function silent(channel: ChannelName, first: number): string {
  const { unit, possible } = channelFacts(channel);
  const range = `${plainNumber(possible[0])} to ${plainNumber(possible[1])} ${unitText(unit)}`;
  return `the ${channelWords(channel)} sensor is dead: no row lies within ${range} (it reads ${cellText(first)})`;
}

export const REVERSED_CURRENT = "the current sensor is reversed: it reads negative amps under load";

export function reversedCurrent(witness: ChannelName): string {
  const sign = witness === "shaftSpeed" ? "the shaft speeds up" : "the volts fall";
  return `Current is negative under load: as it grows, ${sign}. Its sensor is fitted the other way round, so the sign was turned. Check the sensor.`;
}

export function deadSensor(why: string): string {
  return `${capital(why)}. Numbers that need it are not given. Check its plug and leads.`;
}

export function stuck(
  channel: ChannelName,
  witness: ChannelName,
  stretch: { value: number; seconds: number; firstLine: number; lastLine: number },
): string {
  const reading = `${cellText(stretch.value)} ${unitText(channelFacts(channel).unit)}`;
  const where = `lines ${stretch.firstLine} to ${stretch.lastLine}`;
  return `${capital(channelWords(channel))} reads ${reading} for ${secondsText(stretch.seconds)} (${where}) while ${channelWords(witness)} moves. The sensor may be stuck or at its limit: numbers from there are doubtful.`;
}

export function currentFailed(stretch: {
  low: number;
  high: number;
  seconds: number;
  firstLine: number;
  lastLine: number;
}): string {
  const { low, high, seconds, firstLine, lastLine } = stretch;
  const reading = low === high ? `${cellText(low)} A` : `${cellText(low)} to ${cellText(high)} A`;
  return `Current reads ${reading} for ${secondsText(seconds)} (lines ${firstLine} to ${lastLine}) while the motor runs: its sensor stopped. Those rows count as missing; charge and energy of them are not known. Check its plug and leads.`;
}

export function currentCeiling(ceilingA: number, lines: readonly number[], witness: ChannelName): string {
  return `Current reads ${cellText(ceilingA)} A, never more, in ${lines.length} ${lines.length === 1 ? "stretch" : "stretches"} (${linesText(lines, lines.length)}) while ${channelWords(witness)} moves. The sensor may be at its limit: peak, charge and energy are lower bounds.`;
}

export function missing(
  channels: readonly ChannelName[],
  stretches: readonly { seconds: number; firstLine: number; lastLine: number }[],
): string {
  const texts = stretches.map(
    (one) => `${secondsText(one.seconds)} (lines ${one.firstLine} to ${one.lastLine})`,
  );
  const where = listText(texts, texts.length);
  if (channels.length === 1) {
    return `${capital(channelWords(channels[0]!))} is missing for ${where}. It is not counted as 0.`;
  }
  return `Missing together: ${channels.map(channelWords).join(", ")}. For ${where}. None is counted as 0.`;
}

export function coarseResolution(channel: ChannelName, step: number): string {
  const unit = unitText(channelFacts(channel).unit);
  return `The resolution of ${channelWords(channel)} is coarse: it moves in steps of ${cellText(step)} ${unit}. Peaks are good to one step.`;
}

export function negativeRestCurrent(restA: number): string {
  return `Current is negative at rest (${plainNumber(restA)} A): a sensor offset. Charge and energy used are lifted by it; covered sums are not.`;
}
