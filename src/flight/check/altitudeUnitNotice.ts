import type { Notice } from "../../base/notices/index.ts";
import { type ColumnChoice, isUnitUnstated } from "../../log/reading/index.ts";
import { ALTITUDE_CHANGES_THERE, type AnalysedFlight } from "../analysis/index.ts";
import { altitudeUnitAsked } from "./sentences.ts";

/** Feet read as metres make a still altitude restless: where that costs the static run, the unit is asked for. */
export function altitudeUnitNotices(
  columns: readonly ColumnChoice[],
  flights: readonly AnalysedFlight[],
): readonly Notice[] {
  const altitude = columns.find(({ channel }) => channel === "altitude");
  if (altitude === undefined || !isUnitUnstated(altitude)) return [];
  const isLost = flights.some(({ measures }) =>
    [measures.staticCurrentA, measures.staticRpm].some(({ why }) => why === ALTITUDE_CHANGES_THERE),
  );
  if (!isLost) return [];
  return [
    {
      code: "altitude-unit",
      severity: "warning",
      text: altitudeUnitAsked(altitude.header),
      options: ["--unit altitude=ft", "--unit altitude=m"],
    },
  ];
}
