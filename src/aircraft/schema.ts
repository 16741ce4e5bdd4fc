import * as v from "valibot";
import { numberOrDefault, optionalNumber, text, words } from "./schemaFields.ts";
import { controller, field, motor, pack, planned, propeller, sensors } from "./schemaParts.ts";
import { reading } from "./schemaReadings.ts";

/** The aircraft file. Only `name` and `pack.cells` must be there; a key it does not know is an error. */
export const aircraftSchema = v.pipe(
  v.strictObject({
    $schema: v.optional(
      words("Where an editor finds this schema; it plays no part in the analysis.", "./aircraft.schema.json"),
    ),
    name: text("name"),
    flyingMassKg: optionalNumber("flyingMassKg"),
    pack,
    controller: v.optional(controller, {}),
    motor: v.optional(motor, {}),
    propeller: v.optional(propeller, {}),
    planned: v.optional(planned, {}),
    reservePct: numberOrDefault("reservePct"),
    field: v.optional(field, {}),
    sensors: v.optional(sensors, {}),
    readings: v.optional(
      v.pipe(
        v.array(reading),
        v.description("Answers given once about a log, kept for every log with the same header."),
        v.metadata({ examples: [[{ headerSignature: "5c0d1a2b", columns: { packVoltage: "U [V]" } }]] }),
      ),
      [],
    ),
  }),
  v.title("tallywatt aircraft file"),
  v.description("What is fitted in one electric model aircraft, and the power budget that was planned."),
  v.metadata({ examples: [{ name: "Tern", pack: { cells: 8 } }] }),
);

export type AircraftFile = v.InferOutput<typeof aircraftSchema>;

/** A schema below its wrappings: what may stand there. */
export interface SchemaShape {
  readonly wrapped?: SchemaShape;
  readonly pipe?: readonly unknown[];
  readonly entries?: Readonly<Record<string, SchemaShape>>;
  readonly item?: SchemaShape;
  readonly options?: readonly unknown[];
}
