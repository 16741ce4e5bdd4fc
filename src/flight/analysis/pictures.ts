import { once } from "../../base/remembered/index.ts";
import type { FlightContext } from "./flightContext.ts";
import { type HeatView, heatView } from "./heatView.ts";
import type { Identified } from "./identifiedMeasures.ts";
import { type LoadView, loadView } from "./loadView.ts";
import type { Measures } from "./measures.ts";
import { type PackView, packView } from "./packView.ts";

/** What the pictures of the parts are drawn from; small and independent of the number of rows. Worked out when asked for. */
export interface FlightPictures {
  readonly pack: PackView;
  readonly heat: HeatView;
  readonly load: LoadView;
}

export function flightPictures(
  context: FlightContext,
  identified: Identified,
  measures: Measures,
): FlightPictures {
  const pack = once(() => packView(context, identified));
  const heat = once(() => heatView(context, identified, measures));
  const load = once(() => loadView(context, identified, measures));
  return {
    get pack() {
      return pack();
    },
    get heat() {
      return heat();
    },
    get load() {
      return load();
    },
  };
}
