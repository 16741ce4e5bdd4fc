import { minutesAndSeconds, plainNumber, unitText } from "../../../base/quantity/index.ts";
import { capital } from "../../../base/words/index.ts";
import {
  numberRanges,
  type SeasonFlight,
  timerFlights,
  timerLimitWords,
} from "../../../season/overview/index.ts";
import type { TimerLimit, TimerSetting } from "../../../season/timer/index.ts";
import { html, type Markup, NOTHING, sumDrawing } from "../../charts/index.ts";
import { carriedNumber } from "../carried.ts";
import { sentence } from "../sentences.ts";
import type { FlightsContext } from "./seasonInput.ts";
import {
  ALL_COUNT,
  BINDS,
  COUNTED_TITLE,
  countedSentence,
  coverageSentence,
  LEFT_OUT_LEAD,
  LIMITS_TITLE,
  landsBy,
  NO_TIMER_TITLE,
  oneMoreFlightSentence,
  PROVISIONAL,
  SUM_KEY,
  SUM_TITLE,
  TIMER_IS_A_SUGGESTION,
  TIMER_LABELS,
  TIMER_TITLE,
} from "./sentences.ts";
import { sumSteps } from "./sumSteps.ts";

interface TimerContext extends Pick<FlightsContext, "flights"> {
  readonly timer: TimerSetting;
}

/** The timer with its reasons: the numbers, the limits, the sum, and the flights it rests on. */
export function timerSection(context: TimerContext): Markup {
  const { timer } = context;
  const title = timer.timerS === null ? NO_TIMER_TITLE : TIMER_TITLE;
  const body =
    timer.timerS === null
      ? html`<p>${sentence(timer.why ?? timer.text)}</p>${limits(timer)}`
      : html`${figures(timer)}${promise(timer)}${limits(timer)}${sum(timer)}`;
  return html`<section class="timer" aria-labelledby="timer"><h2 id="timer">${title}</h2>${body}${countedFlights(context)}</section>`;
}

function figures({ timerS, touchdownByS, cautiousTimerS }: TimerSetting): Markup {
  const items = [
    [TIMER_LABELS.timer, timerS, TIMER_LABELS.timerHelp, "timerS"],
    [TIMER_LABELS.touchdown, touchdownByS, TIMER_LABELS.touchdownHelp, "touchdownByS"],
    [TIMER_LABELS.cautious, cautiousTimerS, TIMER_LABELS.cautiousHelp, "cautiousTimerS"],
  ] as const;
  const shown = items.flatMap(([words, seconds, help, name]) =>
    seconds === null
      ? []
      : [
          html`<div class="figure"><dt>${words}</dt><dd><b${carriedNumber(name, seconds)}>${minutesAndSeconds(seconds)}</b> <span class="quiet">${help}</span></dd></div>`,
        ],
  );
  return html`<dl class="figures">${shown}</dl>`;
}

function promise({ coverage, reservePct, provisional, oneMoreFlightS, binding }: TimerSetting): Markup {
  const words = binding === null ? "" : timerLimitWords(binding);
  const doubt = provisional ? html`<p class="cut">${PROVISIONAL}</p>` : NOTHING;
  return html`${doubt}<p>${coverageSentence(coverage, reservePct)} ${oneMoreFlightSentence(oneMoreFlightS, words)} <b>${TIMER_IS_A_SUGGESTION}</b></p>`;
}

function limits({ limits: all, binding }: TimerSetting): Markup {
  if (all.length === 0) return NOTHING;
  const items = all.map(
    (limit) =>
      html`<li${carriedNumber(`${limit.by}TouchdownByS`, limit.touchdownByS)}>${limitWords(limit)}${limit.by === binding ? html`: <b>${BINDS}</b>` : NOTHING}</li>`,
  );
  return html`<h3>${LIMITS_TITLE}</h3><ul>${items}</ul>`;
}

function limitWords({ by, touchdownByS, why }: TimerLimit): string {
  const name = capital(timerLimitWords(by));
  if (touchdownByS === null) return `${name}: ${why ?? ""}`;
  const more = why === undefined ? "" : ` (${why})`;
  return `${name}: ${landsBy(touchdownByS)}${more}`;
}

/** The terms of the sum, those in mAh as a falling row of bars. */
function sum({ explained }: TimerSetting): Markup {
  if (explained.length === 0) return NOTHING;
  const steps = sumSteps(explained);
  const rows = explained.map((term, index) => {
    const step = steps[index] ?? null;
    const drawing = step === null ? NOTHING : sumDrawing(step);
    const number = `${plainNumber(term.value).replace("-", "−")} ${unitText(term.unit)}`;
    return html`<li><span>${capital(term.what)}</span><span class="number"${carriedNumber("term", term.value)}>${number}</span><span>${drawing}</span></li>`;
  });
  return html`<h3 id="timer-sum">${SUM_TITLE}</h3><p class="key">${SUM_KEY}</p><ul class="sum" aria-labelledby="timer-sum">${rows}</ul>`;
}

function countedFlights({ flights, timer }: TimerContext): Markup {
  const { counted, leftOut } = timerFlights(flights, timer);
  const reasons = leftOut.map(({ why, flights: own }) => html`<li><b>${flightsWords(own)}</b>: ${why}</li>`);
  const left =
    reasons.length === 0 ? html`<p>${ALL_COUNT}</p>` : html`<p>${LEFT_OUT_LEAD}</p><ul>${reasons}</ul>`;
  return html`<h3>${COUNTED_TITLE}</h3><p>${countedSentence(flightsWords(counted).toLowerCase(), counted.length)}</p>${left}`;
}

/** "Flights 1 to 3 and 7", "1 bench run". */
function flightsWords(flights: readonly SeasonFlight[]): string {
  const numbers = flights.flatMap(({ number }) => number ?? []);
  const benches = flights.length - numbers.length;
  const bench = benches === 0 ? [] : [benches === 1 ? "1 bench run" : `${benches} bench runs`];
  const flown =
    numbers.length === 0 ? [] : [`${numbers.length === 1 ? "Flight" : "Flights"} ${numberRanges(numbers)}`];
  return [...flown, ...bench].join(", ");
}
