import { minutesAndSeconds, plainNumber } from "../../base/quantity/index.ts";
import { capital } from "../../base/words/index.ts";

export function benchRunLeftOut(): string {
  return "a bench run does not fly";
}
export function cutShortLeftOut(): string {
  return "its log is not complete";
}
export function otherPropellerLeftOut(flown: string, fitted: string): string {
  return `flown on ${flown}, fitted is ${fitted}`;
}
export function otherCellsLeftOut(flown: number | null, fitted: number | null): string {
  return `flown with ${flown ?? "unknown"} cells, fitted are ${fitted ?? "unknown"}`;
}

export function otherPackLeftOut(flownMah: number, fittedMah: number): string {
  return `flown with a pack of ${plainNumber(flownMah)} mAh, fitted is ${plainNumber(fittedMah)} mAh`;
}
export function flownLeftOut(flownS: number, loggedS: number): string {
  return `its stated flown time, ${minutesAndSeconds(flownS)}, does not fit the ${minutesAndSeconds(loggedS)} of its log: edit it with --flown`;
}
export function noLoadLeftOut(): string {
  return "its take-off or touchdown was not found";
}

export function noCapacity(): string {
  return "the aircraft file gives no pack.capacityMah; add it and the timer can be set";
}
export function noCountedFlight(total: number): string {
  return total === 0
    ? "the logbook holds no flight of this aircraft; add a complete log first"
    : `none of the ${total} flights counts; add one complete flight on what is fitted now`;
}
export function packTooSmall(): string {
  return "the charge down to the reserve does not last a take-off, a climb and one go-around";
}
/** Another limit than the charge leaves no time. @param words what limits, as `bindingWords` has it */
export function limitTooSoon(words: string, touchdownByS: number, approachS: number): string {
  return `${words} allows a touchdown by ${minutesAndSeconds(touchdownByS)} after take-off, sooner than an approach of ${Math.round(approachS)} s`;
}
export function limitNotReached(): string {
  return "not reached";
}
export function limitNotKnown(what: string): string {
  return `not known: ${what}`;
}

export const NO_LOADED_CELL_LIMIT = "the aircraft file gives no pack.minLoadedCellV";
export const NO_PACK_RESISTANCE = "no counted flight gives the pack's resistance";
export const NO_CONTROLLER_LIMIT = "the aircraft file gives no controller.limitC";
export const NO_HEATING = "no counted flight lets the controller's heating be fitted";

export function colderThanCounted(coldestC: number): string {
  return `rests on flights at ${plainNumber(coldestC)} °C and warmer; a colder pack sags more`;
}
export function tooHotWithoutFit(flight: string, peakC: number, ambientC: number): string {
  return `at ${plainNumber(ambientC)} °C flight ${flight} may reach ${plainNumber(peakC)} °C, over the controller's limit; fly shorter or cooler`;
}

export interface TimerWords {
  readonly timerS: number;
  readonly touchdownByS: number;
  readonly binding: string;
  readonly reservePct: number;
  readonly flights: number;
  readonly isProvisional: boolean;
}

const BINDING_WORDS: Readonly<Record<string, string>> = {
  charge: "the charge",
  voltage: "the loaded cell voltage",
  temperature: "the controller's temperature",
};

export function bindingWords(binding: string): string {
  return BINDING_WORDS[binding] ?? binding;
}

/** What the answer rests on: the air, and the flights that decide it. */
export function reckonedFor(ambientC: number, isHotDay: boolean, flights: readonly string[]): string {
  const air = `Reckoned for air of ${plainNumber(ambientC)} °C${isHotDay ? ", the hot day; another: --ambient" : ""}.`;
  if (flights.length === 0) return air;
  return `${air} ${flights.length === 1 ? "The flight that decides" : "The flights that decide"}: ${flights.join(", ")}.`;
}

/** The whole answer in words. A suggestion from n flights, never a permission. */
export function timerSentence(words: TimerWords): string {
  const flights = words.flights === 1 ? "1 flight" : `${words.flights} flights`;
  const doubt = words.isProvisional ? " Provisional: three flights or more make it firm." : "";
  return (
    `Set the timer to ${minutesAndSeconds(words.timerS)}: start it as you open the throttle for take-off; it rings when the approach must begin. ` +
    `Touch down by ${minutesAndSeconds(words.touchdownByS)}. ` +
    `${capital(bindingWords(words.binding))} sets it: ` +
    `19 of 20 flights land with ${plainNumber(words.reservePct)} % and one go-around left, from ${flights}.${doubt} ` +
    "A suggestion from logs: land earlier when anything feels wrong."
  );
}
