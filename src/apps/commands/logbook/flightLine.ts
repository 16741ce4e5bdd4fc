import { minutesAndSeconds, quantityText } from "../../../base/quantity/index.ts";
import { MEASURE_WORDS, type MeasureName } from "../../../flight/analysis/index.ts";
import type { LogbookEntry } from "../../../season/logbook/index.ts";
import { oneLine } from "../printable.ts";

const LISTED: readonly MeasureName[] = ["chargeUsedMah", "peakCurrentA", "minCellV", "controllerPeakC"];

/** One flight in one line: its name, what was given, its main numbers. */
export function flightLine(entry: LogbookEntry): string {
  const { flight, check } = entry;
  const parts = [kindWords(entry), ...givenWords(entry), ...LISTED.flatMap((name) => numberOf(entry, name))];
  const doubt = check.complete ? "" : ", log not complete";
  return `${flight}  ${oneLine(`${entry.aircraft}, ${parts.join(", ")}${doubt}`)}`;
}

function kindWords({ check, given }: LogbookEntry): string {
  if (check.kind === "benchRun") return "bench run";
  const flown = given.flownS ?? check.measures.flightTimeS.value;
  return flown === null ? "flight" : `flight of ${minutesAndSeconds(flown)}`;
}

/** What the pilot said of the flight, in words. */
export function givenWords({ given }: LogbookEntry): readonly string[] {
  return [
    ...(given.pack === null ? [] : [`pack ${given.pack}`]),
    ...(given.propeller === null ? [] : [`propeller ${given.propeller}`]),
    ...(given.ambientC === null ? [] : [`${given.ambientC} °C`]),
    ...(given.startPct === null ? [] : [`started at ${given.startPct} %`]),
    ...(given.putBackMah === null ? [] : [putBackWords(given.putBackMah, given.putBackFlights)]),
  ];
}

function putBackWords(mah: number, flights: readonly string[]): string {
  return `put back ${mah} mAh${flights.length > 1 ? ` after ${flights.join(" and ")}` : ""}`;
}

function numberOf({ check }: LogbookEntry, name: MeasureName): readonly string[] {
  const quantity = check.measures[name];
  return quantity.value === null ? [] : [`${MEASURE_WORDS[name]} ${quantityText(quantity)}`];
}
