import * as v from "valibot";
import { flight as checkedFlight, measures, notice, quantity } from "./resultSchemas.ts";

/** The JSON results of the logbook's commands. More keys may be added to a result, so none is closed. */

const text = (description: string) => v.pipe(v.string(), v.description(description));
const count = (description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.description(description));
const orNull = (description: string) => v.nullable(text(description));
const numberOrNull = (description: string) => v.pipe(v.nullable(v.number()), v.description(description));
const flightNames = (description: string) => v.pipe(v.array(v.string()), v.description(description));
const dryRun = v.pipe(v.boolean(), v.description("True with --dry-run: nothing was changed."));

const given = v.object({
  pack: orNull("Name of the pack."),
  propeller: orNull("Diameter x pitch in inches, as 18x10, when it was not the fitted one."),
  ambientC: numberOrNull("Air temperature of the day, degrees Celsius."),
  startPct: numberOrNull("State of charge at the start, percent."),
  putBackMah: numberOrNull("What the charger put back, mAh."),
  putBackFlights: flightNames("The flights that this charge covers together."),
  flownS: numberOrNull("Flight time by the pilot's own watch, seconds."),
  date: orNull("Day of the flight, YYYY-MM-DD."),
  note: orNull("A line of the pilot's own."),
});

const damaged = v.array(
  v.object({ path: text("File of the logbook."), why: text("Why it cannot be used.") }),
);

export const calibration = v.pipe(
  v.nullable(
    v.object({
      gain: v.number(),
      low: v.number(),
      high: v.number(),
      putBacks: count("Charges it rests on."),
      isApplied: v.boolean(),
      leftOut: v.array(v.object({ flight: v.string(), why: v.string() })),
    }),
  ),
  v.description("What the put-backs say of the current sensor: true amps are logged amps times gain."),
);

export const add = v.pipe(
  v.object({
    format: v.literal("tallywatt/add"),
    version: v.literal(1),
    dryRun,
    logs: v.array(
      v.object({
        file: text("Name of the log."),
        sha256: text("Digest of its bytes; empty when it could not be read."),
        aircraft: orNull("Name of the aircraft."),
        state: v.picklist(["added", "already", "stopped"]),
        flights: flightNames("Names of its flights in the logbook."),
        notices: v.array(notice),
      }),
    ),
    calibration,
  }),
  v.title("tallywatt add"),
  v.description("What became of each log: the result of `tallywatt add LOG --json`."),
);

const putBacksLeftOut = v.pipe(
  v.array(v.object({ flight: v.string(), why: v.string() })),
  v.description("Flights whose put-back cannot be used."),
);

export const list = v.pipe(
  v.object({
    format: v.literal("tallywatt/list"),
    version: v.literal(1),
    flights: v.array(
      v.object({
        flight: text("Name in the logbook."),
        aircraft: v.string(),
        kind: v.picklist(["flight", "benchRun"]),
        complete: v.boolean(),
        startsAt: orNull("Start by the log's clock or the date given; no zone."),
        log: text("Name of the log."),
        given,
        release: text("Release that analysed it."),
        headline: v.string(),
        measures,
      }),
    ),
    damaged,
    calibration,
    putBacksLeftOut,
  }),
  v.title("tallywatt list"),
  v.description("The flights in the order they were flown: the result of `tallywatt list --json`."),
);

export const flight = v.pipe(
  v.object({
    format: v.literal("tallywatt/flight"),
    version: v.literal(1),
    flight: text("Name in the logbook."),
    sequence: count("Counts up in the order of adding."),
    aircraft: v.string(),
    log: v.object({
      path: text("Where the log lies in the logbook."),
      file: text("Name it came with."),
      sha256: v.string(),
      index: count("Which flight of the log, from 0."),
      flights: count("Flights found in the log."),
      headerSignature: v.nullable(v.string()),
    }),
    startsAt: orNull("Start by the log's clock or the date given; no zone."),
    given,
    reading: v.pipe(v.looseObject({}), v.description("Answers given with the log.")),
    facts: v.pipe(v.looseObject({}), v.description("What was fitted, as the flight was judged.")),
    budget: v.pipe(v.looseObject({}), v.description("What was planned then.")),
    release: text("Release that analysed it."),
    check: checkedFlight,
    load: v.pipe(v.nullable(v.looseObject({})), v.description("What it asked of the pack; null: not known.")),
    fingerprint: v.pipe(
      v.nullable(v.array(v.number())),
      v.description("Charge at equal parts of the motor's run, mAh."),
    ),
    notices: v.array(notice),
  }),
  v.title("tallywatt flight"),
  v.description("One flight as the logbook keeps it: the result of `tallywatt show FLIGHT --json`."),
);

export const change = v.pipe(
  v.object({
    format: v.literal("tallywatt/change"),
    version: v.literal(1),
    command: v.picklist(["edit", "remove", "undo"]),
    dryRun,
    flights: flightNames("Flights that were changed."),
  }),
  v.title("tallywatt change"),
  v.description("What edit, remove and undo changed."),
);

export const recheck = v.pipe(
  v.object({
    format: v.literal("tallywatt/recheck"),
    version: v.literal(1),
    dryRun,
    flights: v.array(
      v.object({
        flight: v.string(),
        changes: v.array(v.object({ measure: v.string(), before: quantity, after: quantity })),
        why: orNull("Why the flight stays as it was; null when it was analysed again."),
      }),
    ),
  }),
  v.title("tallywatt recheck"),
  v.description("Which measures this release gives anew: the result of `tallywatt recheck --json`."),
);

export const verify = v.pipe(
  v.object({
    format: v.literal("tallywatt/verify"),
    version: v.literal(1),
    folder: v.string(),
    flights: count("Flights that can be used."),
    logs: count("Logs in the folder."),
    problems: v.array(
      v.object({
        path: text("File of the logbook."),
        what: v.string(),
        todo: text("What to do about it."),
        isDamage: v.pipe(v.boolean(), v.description("False for what is only worth knowing.")),
      }),
    ),
  }),
  v.title("tallywatt verify"),
  v.description("What is damaged: the result of `tallywatt verify --json`."),
);

export const exported = v.pipe(
  v.object({
    format: v.literal("tallywatt/export"),
    version: v.literal(1),
    dryRun,
    file: v.string(),
    flights: count("Flights written."),
  }),
  v.title("tallywatt export"),
  v.description("What was written: the result of `tallywatt export FILE --json`."),
);
