import * as v from "valibot";
import { quantity } from "./resultSchemas.ts";

/** The JSON results about many flights. */

const text = (description: string) => v.pipe(v.string(), v.description(description));
const seconds = (description: string) => v.pipe(v.number(), v.description(`${description}, seconds.`));
const count = (description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.description(description));

const limit = v.object({
  by: v.picklist(["charge", "voltage", "temperature"]),
  touchdownByS: v.nullable(seconds("From opening the throttle for take-off")),
  why: v.optional(text("Why it is null, or a caution.")),
  flights: v.optional(v.pipe(v.array(v.string()), v.description("The flights that decide it."))),
});

export const timer = v.pipe(
  v.object({
    format: v.literal("tallywatt/timer"),
    version: v.literal(1),
    aircraft: v.string(),
    pack: v.nullable(v.string()),
    flights: count("Flights it rests on."),
    timerS: v.nullable(seconds("From opening the throttle for take-off until the approach must begin")),
    touchdownByS: v.nullable(seconds("The touchdown it aims at")),
    cautiousTimerS: v.nullable(seconds("The timer sure to 95 % that 19 of 20 flights keep the reserve")),
    binding: v.nullable(v.picklist(["charge", "voltage", "temperature"])),
    limits: v.array(limit),
    coverage: v.pipe(v.number(), v.description("Share of flights that land with the reserve.")),
    reservePct: v.number(),
    provisional: v.pipe(v.boolean(), v.description("Fewer than three flights.")),
    leftOut: v.array(v.object({ flight: v.string(), why: v.string() })),
    ambientC: v.pipe(v.number(), v.description("Air it is reckoned for, degC.")),
    isHotDay: v.pipe(v.boolean(), v.description("That air is the aircraft file's hot day.")),
    explained: v.pipe(
      v.array(v.object({ what: v.string(), value: v.number(), unit: v.string() })),
      v.description("Each part of the sum of the charge limit."),
    ),
    oneMoreFlightS: v.nullable(seconds("What one more flight like these would add")),
    why: v.optional(text("Why there is no timer.")),
    text: text("The answer in words."),
  }),
  v.title("tallywatt timer"),
  v.description("A flight timer from the logged flights: the result of `tallywatt timer --json`."),
);

const series = v.object({
  measure: v.picklist([
    "controllerRisePerA2",
    "controllerTimeConstantS",
    "packResistanceMohm",
    "chargeRateMahPerS",
    "propellerPowerCoefficient",
  ]),
  of: v.object({
    pack: v.nullable(v.string()),
    propeller: v.nullable(v.string()),
    controller: v.nullable(v.string()),
  }),
  points: v.array(
    v.object({
      flight: v.string(),
      value: v.number(),
      low: v.nullable(v.number()),
      high: v.nullable(v.number()),
    }),
  ),
  slopePerFlight: v.pipe(quantity, v.description("Per flight; of a pack per charge.")),
  verdict: v.picklist(["rising", "falling", "shifted", "no change shown", "not judged"]),
  alarm: v.nullable(
    v.object({
      kind: v.picklist(["trend", "shift"]),
      afterPoints: count("Points at the look that raised it."),
      splitAfter: count("Points before the shift; 0 for a trend."),
      p: v.pipe(v.number(), v.description("Chance of as much without a change.")),
    }),
  ),
  crossing: v.nullable(
    v.object({
      limit: v.string(),
      limitValue: v.pipe(v.number(), v.description("The measure's value then, in its unit.")),
      flights: count("Flights or charges until then."),
      soonest: count("Low end."),
      latest: count("High end."),
    }),
  ),
  text: v.string(),
});

export const trend = v.pipe(
  v.object({
    format: v.literal("tallywatt/trend"),
    version: v.literal(1),
    aircraft: v.string(),
    series: v.array(series),
    leftOut: v.pipe(
      v.array(v.object({ flight: v.string(), why: v.string() })),
      v.description("Flights in no series, since their current is not to be believed."),
    ),
    sinceLastFlight: v.nullable(text("The last flight against the one before on the same fitting.")),
    text: text("How many series changed, and which flights were left out and why."),
  }),
  v.title("tallywatt trend"),
  v.description("What changes from flight to flight: the result of `tallywatt trend --json`."),
);
