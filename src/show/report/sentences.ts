import type { ChannelName } from "../../base/channels/index.ts";
import { channelWords } from "../../base/channels/index.ts";
import type { Notice, Severity } from "../../base/notices/index.ts";
import { minutesAndSeconds, type SampleReference, toPlace } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";
import type { HeatDriver, PhaseName } from "../../flight/analysis/index.ts";
import type { Dialect } from "../../log/reading/index.ts";
import type { Repair } from "../../log/recording/index.ts";

/** Every sentence and label of the report that is not data. */

export const PHASE_WORDS: Readonly<Record<PhaseName, string>> = {
  rest: "rest",
  runUp: "run-up",
  taxi: "taxi",
  takeOff: "take-off",
  flight: "flight",
  landing: "landing",
  after: "after",
};

/** Seconds as a person says them: 278 -> "4 min 38 s". */
export function durationWords(value: number): string {
  const whole = Math.round(value);
  return `${Math.floor(whole / 60)} min ${whole % 60} s`;
}

export function durationsWords(measured: string, planned: string): string {
  return `${measured} against ${planned}`;
}

export function leftAloneWords(count: number): string {
  return count === 1 ? "1 column left alone" : `${count} columns left alone`;
}

export function atTime(seconds: number): string {
  return `at ${minutesAndSeconds(seconds)}`;
}

export function seconds(value: number): string {
  return `${toPlace(value, value < 100 && !Number.isInteger(value) ? -1 : 0)} s`;
}

export function noDataWords(lengthS: number, isUnknownLength: boolean): string {
  return isUnknownLength ? "clock jumped" : `no data ${seconds(lengthS)}`;
}

export function limitWords(value: string): string {
  return `limit ${value}`;
}

export function extremeWords(value: string, atS: number): string {
  return `${value}, ${minutesAndSeconds(atS)}`;
}

export function scaleStartSentence(from: string): string {
  return `The scale starts at ${from}.`;
}

export function limitsOffScaleSentence(limits: readonly string[]): string {
  return `Beyond this scale: ${limits.join("; ")}.`;
}

export function gapsSentence(count: number, lengthS: number): string {
  return count === 1
    ? `No data for ${seconds(lengthS)}.`
    : `No data for ${seconds(lengthS)} in ${count} stretches.`;
}

/** "Peak power 2080 ± 52 W, at 1:12 (line 720)." */
export function extremeSentence(title: string, valueText: string, sample: SampleReference | null): string {
  const where = sample === null ? "" : `, ${atTime(sample.atS)} (line ${sample.line})`;
  return `${title} ${valueText}${where}.`;
}

export function nothingMeasuredSentence(title: string, why: string): string {
  return `${title} is not known: ${sentence(why)}`;
}

export function notDrawnSentence(channel: ChannelName, why: string): string {
  return `Not drawn: ${channelWords(channel)}. ${sentence(why)}`;
}

/** First letter large, full stop at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === "") return "";
  const first = capital(trimmed);
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

export const BUDGET_LIMIT_AXIS =
  "Every bar starts at nothing used and runs to the right. The wall at 100 % is the limit. For cell volts 0 % is a full cell.";
export const BUDGET_PLAN_AXIS =
  "100 % is the planned value. The framed band is where the measured value should lie.";
export const BUDGET_KEY =
  "Disc: measured. Bar: 95 % interval. Upright mark: plan. Toothed wall: limit. Arrow: open end or beyond the axis.";
export const NO_BUDGET_TEXT =
  "No plan and no limit to judge by. Give an aircraft file with --aircraft to hold this flight against its budget.";

export function limitsPassedSentence(passed: number, close: number, notJudged: number): string {
  if (passed > 0) return `No go: ${limits(passed)} passed. Settle this before the next run.`;
  if (close > 0) return `Look again: ${limits(close)} close. Settle this before the first flight.`;
  if (notJudged > 0)
    return `No limit was passed, but ${limits(notJudged)} not judged. Find out before the first flight.`;
  return "Go, as far as this log can tell: no limit was passed.";
}

export const WHO_DECIDES =
  "The makers' limits and your club's rules come first; the decision stays with you.";

function limits(count: number): string {
  return count === 1 ? "1 limit is" : `${count} limits are`;
}

export const AFTER_A_LIMIT: readonly string[] = [
  "Disconnect the pack and let every hot part cool before you touch or charge anything.",
  "Check leads, plugs and solder joints for heat marks and loose contact.",
  "Do not recharge a pack that went below its maker's lowest volts; set it apart outdoors and watch it.",
  "Find the cause before the next flight. The makers' limits come before this report.",
];

/** A caution has three parts: the hazard, what it can do, how to avoid it. */
export interface Caution {
  readonly word: "Warning" | "Caution";
  readonly about: string;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
}

export const CAUTIONS: readonly Caution[] = [
  {
    word: "Warning",
    about: "Packs",
    hazard: "A lithium pack that is hurt, swollen, overcharged or run too low can catch fire.",
    consequence: "The fire spreads from cell to cell, burns people and buildings, and is hard to put out.",
    avoid:
      "Charge with the right cell count, watched, on a surface that cannot burn. Let packs cool first; never charge a swollen or crashed one.",
  },
  {
    word: "Warning",
    about: "Propellers",
    hazard: "A propeller can start without warning, and a blade driven past its maker's speed can come off.",
    consequence: "It cuts to the bone and throws parts across the field.",
    avoid:
      "Take the propeller off for bench work, tie the aircraft down for runs, and stay out of the propeller's plane.",
  },
  {
    word: "Warning",
    about: "Falling aircraft",
    hazard: "A controller that shuts down or a pack that runs empty takes power and perhaps control away.",
    consequence: "Several kilograms falling can kill a person.",
    avoid: "Keep clear of people, keep charge in reserve, and follow local law and your club's safety code.",
  },
  {
    word: "Caution",
    about: "Hot controllers and motors",
    hazard: "Controllers, motors and leads stay hot for minutes after a run.",
    consequence: "They burn skin and melt wiring; a part past its limit can fail in the next flight.",
    avoid:
      "Let them cool before touching, give them air, and stay below the maker's limit, not this report's number.",
  },
];

export const INTERVAL_METHOD =
  "The number after ± is half of a 95 % interval (k = 2). Sensor accuracy, sampling and holes are in it (JCGM 100:2008).";
export const BASIS_METHOD =
  "Measured: read off one sensor. Derived: computed from sensors. Estimated: rests on a fit or an assumption, stated beside it.";
export const THINNING_METHOD =
  "Lines keep the first, last, lowest and highest sample of every pixel column (Jugel and others, 2014, PVLDB 7(10)).";
export const REPAIR_METHOD =
  "Values no sensor can mean and lone spikes are left out and listed. The spike rule follows Hampel (1974, JASA 69), made stricter.";
export const CURSOR_HELP =
  "Point at or tap a chart to read every panel there. Keys in a chart: arrows move by one sample, with Shift by ten, Home and End jump, Esc clears.";
export const ZOOM_HELP = "Zoom: drag across a chart, or press + and −; 0 shows the whole log.";
export const ZOOM_BUTTONS = {
  in: "Zoom in",
  out: "Zoom out",
  earlier: "Earlier",
  later: "Later",
  whole: "Whole log",
} as const;
export const NOT_A_PROMISE =
  "This report describes one log. It cannot see damage, wear, wind or a pilot's day, and it promises nothing about the next flight.";

export const UNNAMED_AIRCRAFT = "Flight check";
export function titleWords(aircraft: string | null, file: string): string {
  return aircraft === null ? `Flight check of ${file}` : `${aircraft}: flight check of ${file}`;
}
export const NOT_COMPLETE =
  "The log starts or ends under power: sums, time and peaks are bounds, and the mean is that of a part.";
export const NOTHING_DRAWN = "Nothing to draw: no channel of this log holds usable values in this flight.";
export const NOTHING_REPAIRED = "Nothing: every row was used as it was written.";
export const EVERYTHING_KNOWN = "Every measure could be computed.";
export const STOPPED_TITLE = "Not computed";
export const NO_AIRCRAFT =
  "No aircraft file was given. The sensor accuracies below are the defaults that the intervals contain.";
export const ASSUMED_SENSORS =
  "From the aircraft file. Sensor accuracies are two standard deviations, and every interval contains them.";

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  note: "Note.",
  warning: "Mind this.",
  question: "Question.",
  refusal: "Not usable.",
};

export const REPAIR_WORDS: Readonly<Record<Repair["kind"], string>> = {
  impossible: "beyond what this sensor can mean",
  spike: "a lone jump that no other sensor shows",
  jump: "no part warms or cools so fast",
};

export const DRIVER_WORDS: Readonly<Record<HeatDriver, string>> = {
  packCurrent: "Driver: pack current squared.",
  motorCurrent: "Driver: motor current squared.",
  powerFourThirds: "Driver: current to the power of four thirds, for want of a speed sensor.",
};

export function flightTitle(
  number: number,
  count: number,
  kind: "flight" | "benchRun",
  startedAt: string | null,
): string {
  const what = kind === "flight" ? "Flight" : "Bench run";
  const which = count === 1 ? what : `${what} ${number} of ${count}`;
  return startedAt === null ? which : `${which}, started ${startedAt} by the log's clock`;
}

export function stoppedSentence(notices: readonly Notice[]): string {
  return notices.some((notice) => notice.severity === "refusal")
    ? "This log could not be used. The reasons are below."
    : "A choice is needed before anything can be computed. The options below settle it.";
}

export function rowsWords(used: number, all: number): string {
  return used === all ? `${all} rows, all used` : `${used} of ${all} rows used`;
}

export function holesWords(count: number, lengthS: number): string {
  if (count === 0) return "no holes";
  return `${count === 1 ? "1 hole" : `${count} holes`}, ${seconds(lengthS)}`;
}

export function flightsWords(count: number): string {
  return `${count} flights`;
}

export function sampleWords(atS: number, line: number): string {
  return `At ${minutesAndSeconds(atS)}, line ${line}.`;
}

export function tableCaption(title: string, step: string): string {
  return `${title}: a row every ${step}, and every extreme`;
}

export function cursorRowsWords(kept: number, all: number): string {
  return kept === all ? "" : `The cursor steps over the ${kept} of ${all} rows that shape the lines.`;
}

export function moreWords(count: number): string {
  return `and ${count} more; the JSON result lists what is counted.`;
}

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "upright bars",
  " ": "spaces",
};

export function dialectSentence({ encoding, delimiter, decimalMark, headerLine }: Dialect): string {
  const mark = decimalMark === "." ? "point" : "comma";
  return `Cells are parted by ${DELIMITER_WORDS[delimiter] ?? delimiter}, with a decimal ${mark}, in ${encoding}; the header is line ${headerLine}.`;
}

export function releaseWords(release: string): string {
  return `Written by tallywatt ${release} from`;
}

export function digestWords(sha256: string): string {
  return `SHA-256 of the log: ${sha256}`;
}

export const HIGHEST = "highest";
export const LOWEST = "lowest";

export const LINES_SUMMARY = "file lines";

export const CLOCK_HEAD = "log's clock";

export function clockHeadOn(date: string): string {
  return `log's clock, ${date}`;
}
