import { workingChannel } from "./channelOrWhy.ts";
import { firstReading } from "./firstReading.ts";
import type { FlightContext } from "./flightContext.ts";
import { AMBIENT_FROM_CHANNEL, AMBIENT_FROM_CONTROLLER, AMBIENT_STATED, NO_AMBIENT } from "./sentences.ts";

/** Air temperature of the day, degC, one standard deviation, and where it comes from; null with the reason. */
export type AmbientOfDay =
  | { readonly ambientC: number; readonly standardDeviationC: number; readonly source: string }
  | { readonly ambientC: null; readonly why: string };

/** What a pilot states and the air at the model agree to about 2.8 degC, two standard deviations (common practice, no published source). */
const STATED_SD_C = 1.38;
/** A controller before its first run of the day: sun and standby warm it (common practice, no published source). */
const FROM_CONTROLLER_SD_C = 4;

/** The day's ambient: stated, logged, or the controller's first reading before the log's first run. */
export function ambientOfDay(context: FlightContext): AmbientOfDay {
  const { day, recording, rows, facts } = context;
  if (day.ambientC !== null) {
    return { ambientC: day.ambientC, standardDeviationC: STATED_SD_C, source: AMBIENT_STATED };
  }
  const air = workingChannel(recording, "ambientTemperature");
  const logged = air && firstReading(context, air);
  if (logged !== null) {
    const standardDeviationC = Math.max(0.5, facts.sensors.temperatureAccuracyC / 2);
    return { ambientC: logged, standardDeviationC, source: AMBIENT_FROM_CHANNEL };
  }
  const controller = workingChannel(recording, "controllerTemperature");
  const isFirstRun = rows.firstRow === 0 && context.restBefore.packV !== null;
  const first = isFirstRun && controller ? firstReading(context, controller) : null;
  if (first === null) return { ambientC: null, why: NO_AMBIENT };
  return { ambientC: first, standardDeviationC: FROM_CONTROLLER_SD_C, source: AMBIENT_FROM_CONTROLLER };
}
