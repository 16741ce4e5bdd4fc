import { minutesAndSeconds, plainNumber } from "../../../base/quantity/index.ts";
import type { FittingChange, SeasonCounts } from "../../../season/overview/index.ts";
import type { FlightReference } from "./flightWords.ts";

/** Every sentence and label of the season report that is not data. */

export function seasonTitle(aircraft: string): string {
  return `${aircraft}: season report`;
}

export function countsWords({ flights, benchRuns, firstDay, lastDay }: SeasonCounts): readonly string[] {
  const flown = flights === 1 ? "1 flight" : `${flights} flights`;
  const bench = benchRuns === 0 ? [] : [benchRuns === 1 ? "1 bench run" : `${benchRuns} bench runs`];
  const days = firstDay === null || lastDay === null ? [] : [dayRange(firstDay, lastDay)];
  return [flown, ...bench, ...days];
}

function dayRange(first: string, last: string): string {
  return first === last ? first : `${first} to ${last}`;
}

export function flownWords(flownS: number, known: number, flights: number): string {
  const hours = Math.floor(flownS / 3600);
  const minutes = Math.round((flownS - 3600 * hours) / 60);
  const time = hours === 0 ? `${minutes} min` : `${hours} h ${minutes} min`;
  return known === flights ? `${time} in the air` : `${time} in the air in ${known} of them`;
}

export const EMPTY_SEASON = "The logbook holds no flight of this aircraft. Add one: tallywatt add LOG";

export const TIMER_TITLE = "The timer";
export const NO_TIMER_TITLE = "No timer yet";
export const TIMER_LABELS = {
  timer: "Timer",
  timerHelp: "from opening the throttle for take-off; it rings when the approach must begin",
  touchdown: "Touch down by",
  touchdownHelp: "the landing that the timer aims at",
  cautious: "Cautious timer",
  cautiousHelp: "so that 19 of 20 flights hold with 95 % confidence, while few flights are known",
} as const;
export const PROVISIONAL =
  "Provisional: it rests on fewer than 3 flights. Land well before it rings until 3 or more are logged.";
export const TIMER_IS_A_SUGGESTION =
  "A suggestion from logged flights, never a permission. Land earlier when anything feels wrong.";
export const LIMITS_TITLE = "What limits the flight";
export const SUM_TITLE = "How the charge limit adds up";
export const SUM_KEY =
  "Each bar shows what a step takes from the pack's charge; the full scale is the pack at the start.";
export const COUNTED_TITLE = "Which flights count";
export const BINDS = "sets the timer";

export function landsBy(seconds: number): string {
  return `touch down by ${minutesAndSeconds(seconds)}`;
}

export function oneMoreFlightSentence(seconds: number | null, binding: string): string {
  if (seconds === null) return `One more flight would not lengthen it while ${binding} sets it.`;
  if (seconds < 1) return "One more flight like these would add less than a second.";
  return `One more flight like these would add about ${plainNumber(Math.round(seconds))} s.`;
}

export function coverageSentence(coverage: number, reservePct: number): string {
  const share = Math.round(coverage * 20);
  return `The promise: ${share} of 20 flights land with ${plainNumber(reservePct)} % of the charge and one go-around unspent.`;
}

export function countedSentence(flights: string, count: number): string {
  if (count === 0) return "No flight counts yet.";
  return count === 1 ? `It rests on ${flights}.` : `It rests on ${count} flights: ${flights}.`;
}

export const ALL_COUNT = "Every flight of the book counts.";
export const LEFT_OUT_LEAD = "Left out, and why:";

export const NO_SINCE_LAST =
  "Since your last flight: nothing to compare yet, this fitting has fewer than two flights.";

export const CALIBRATION_TITLE = "The current sensor";
export const NOT_CALIBRATED =
  "Not calibrated: fewer than two put-backs can be used. Note what the charger returns with --put-back.";

export function calibrationSentence(
  calibration: {
    readonly gain: number;
    readonly low: number;
    readonly high: number;
    readonly putBacks: number;
    readonly isScattered: boolean;
  },
  isApplied: boolean,
): string {
  const { gain, low, high, putBacks, isScattered } = calibration;
  const range = `${percent(low)} to ${percent(high)} %`;
  const found = `${putBacks} put-backs say that true current is ${percent(gain)} % of what the sensor reads (${range}).`;
  if (isScattered)
    return `${found} They differ too much, so nothing is corrected: check which flights each one charged.`;
  return isApplied
    ? `${found} The timer corrects for it; every other figure of this page stands as logged.`
    : `${found} The range includes 100 %, so nothing is corrected.`;
}

function percent(share: number): string {
  return (100 * share).toFixed(1);
}

export function putBackLeftOut(flights: string, why: string): string {
  return `${flights}: ${why}`;
}

export const TRENDS_TITLE = "Trends";
export const SINGLE_KEY = "Marks: one flight each, with its 95 % interval as an upright line.";
export const BREAK_KEY = "A dotted line: a part was changed, and a new series begins.";
export const NO_TRENDS = "No measure has a flight to show yet.";

export function groupedSentence(flights: number): string {
  return `Each mark stands for up to ${flights} flights: their median, with a line from the lowest to the highest.`;
}

export function slopeWords(slope: string, unit: string, per: string): string {
  return `Slope ${slope.replaceAll("-", "−")}${unit === "" ? "" : ` ${unit}`} a ${per}.`;
}

/** "Pack A:", or "Pack A, a change:". */
export function seriesLead(words: string, isChanged: boolean): string {
  return isChanged ? `${words}, a change found:` : `${words}:`;
}

export const LOG_NOT_COMPLETE = "log not complete";

export function notJudgedWords(lines: number): string {
  return `${lines} not judged`;
}

export function changeSentence({ part, from, to }: FittingChange, at: FlightReference): string {
  return `From ${at.words}: ${part} ${to} instead of ${from}.`;
}

export const CHANGES_LEAD = "New series begin where a part was changed:";
export const NO_CHANGES = "Propeller, motor, controller and pack size stayed the same all season.";

export function moreChanges(count: number): string {
  return `${count} changes of what was fitted`;
}

export const HEAT_TITLE = "Controller temperature beside load and weather";
export const HEAT_LEAD =
  "One flight axis for all three: a warmer controller with equal load and weather is the one to look into.";
export const MARGINS_TITLE = "Current, cell voltage and charge left";
export const MARGINS_LEAD = "Each flight against the walls it must stay away from.";

export function rangeSentence(title: string, lowest: string, highest: string, where: string): string {
  return `${title} from ${lowest} to ${highest}, ${where}.`;
}

export function onlyValueSentence(title: string, value: string): string {
  return `${title} ${value}.`;
}

export function missingSentence(missing: number, all: number): string {
  return missing === 1 ? `1 of ${all} has no value.` : `${missing} of ${all} have no value.`;
}

export function notNotedSentence(title: string, what: string): string {
  return `${title}: no flight gives it. ${what}`;
}

export const AMBIENT_HOW = "Note the air of the day with --ambient when you add a log.";
export const NOT_LOGGED = "No log of this season lets it be measured.";

export function planWords(value: string): string {
  return `plan ${value}`;
}
export function reserveWords(value: string): string {
  return `reserve ${value}`;
}

export const FLIGHTS_TITLE = "Flight by flight";
export const FLIGHTS_LEAD =
  "Newest first. The verdict is the worst of all lines; what it is about stands beside it.";
export const FLIGHTS_WITH_REPORTS = "A flight's name opens its own report.";
export const FLIGHTS_WITHOUT_REPORTS =
  "For each flight's own report write this page with --with-flights, or use tallywatt check LOG --report.";

export const PACKS_TITLE = "Packs side by side";
export const PACKS_LEAD =
  "Resistance is the drop one second after a step. A cold pack reads higher: compare warm with warm.";
export const PACKS_KEY = "Ring: first. Disc: latest, with its 95 % interval.";
export const UNNAMED_PACK = "not named";

export const PLAN_TITLE = "The plan against the season";
export const PLAN_KEY =
  "Disc: median of the season. Bar: lowest to highest flight. Upright mark: plan. Toothed wall: limit. Arrow: beyond the axis.";
export const PLAN_NEWEST =
  "Every flight is held against the plan as it is now, whatever was fitted then, and against the limits it was flown with.";
export const NOTHING_PLANNED =
  "No plan and no limit to judge by. Put them into the aircraft file to hold the season against its budget.";

export function mostWords(count: number): string {
  return count === 1 ? "1 flight" : `${count} flights`;
}

export function worstFlight(sense: "atMost" | "atLeast" | "around", flight: string): string {
  if (sense === "around") return `farthest off in ${flight}`;
  return sense === "atLeast" ? `lowest in ${flight}` : `highest in ${flight}`;
}

export const TREND_METHOD =
  "Slopes: Theil and Sen (1968, JASA 63). Change: Mann (1945, Econometrica 13) and Kendall, exact for few flights, looked at after 6, 8, 10, 12.";
export const SHIFT_METHOD =
  "Sudden shift: a seeded permutation test of the best split. With four series, a false alarm in a season of 12 flights stays below 5 %.";
export const TIMER_METHOD =
  "Timer: a one-sided 95 % predictive bound on the charge rate (Student t), the spread pooled with a stated prior of 15 % worth 3 flights.";
export const CAUTIOUS_METHOD =
  "Cautious timer: a one-sided tolerance bound from the noncentral t distribution (Hahn and Meeker, 1991, Statistical Intervals). Its spread is pooled with 20 % worth 3 flights; from 6 flights on their own counts where it asks for more.";
export const GROUP_METHOD =
  "With more than 150 flights, charts and their tables group neighbouring flights; the list of flights keeps each one.";

export const NOT_A_PROMISE_OF_A_SEASON =
  "This report describes logged flights. It cannot see damage, wear, wind or a pilot's day, and it promises nothing about the next flight.";

export function footerWords(release: string, aircraft: string, flights: number): string {
  return `Written by tallywatt ${release} from ${mostWords(flights)} in the logbook of ${aircraft}.`;
}

export function trendTableCaption(title: string, groupedBy: number): string {
  return groupedBy === 1 ? `${title}: every flight of a series` : `${title}: ${GROUPED_CAPTION}`;
}

export function stackTableCaption(groupedBy: number): string {
  return groupedBy === 1 ? "Every flight" : GROUPED_CAPTION;
}

const GROUPED_CAPTION = "median of neighbouring flights (lowest to highest)";

export function groupSummary(numbers: string, firstDay: string | null, lastDay: string | null): string {
  const days = firstDay === null || lastDay === null ? "" : `, ${dayRange(firstDay, lastDay)}`;
  return `Flights ${numbers}${days}`;
}

export function mostPacksWords(more: number): string {
  return `and ${more} more; tallywatt trend lists every pack.`;
}
