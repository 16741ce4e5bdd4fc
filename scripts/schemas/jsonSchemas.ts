import { toJsonSchema } from "@valibot/to-json-schema";
import { aircraftSchema } from "../../src/aircraft/index.ts";
import { add, change, exported, flight, list, recheck, verify } from "./bookSchemas.ts";
import {
  columns,
  dialect,
  flightCheck,
  flightChecks,
  notice,
  plan,
  quantity,
  swap,
} from "./resultSchemas.ts";
import { timer, trend } from "./seasonSchemas.ts";

const definitions = { quantity, notice, dialect };

/** Every JSON Schema of the package by file name; what schemas/ must hold. */
export function jsonSchemas(): ReadonlyMap<string, object> {
  return new Map<string, object>([
    ["aircraft.schema.json", toJsonSchema(aircraftSchema, { typeMode: "input" })],
    ["flight-check.schema.json", toJsonSchema(flightCheck, { definitions })],
    [
      "flight-checks.schema.json",
      toJsonSchema(flightChecks, { definitions: { ...definitions, flightCheck } }),
    ],
    ["columns.schema.json", toJsonSchema(columns, { definitions })],
    ["plan.schema.json", toJsonSchema(plan, { definitions: { quantity } })],
    ["swap.schema.json", toJsonSchema(swap, { definitions: { quantity } })],
    ["timer.schema.json", toJsonSchema(timer)],
    ["trend.schema.json", toJsonSchema(trend, { definitions: { quantity } })],
    ["add.schema.json", toJsonSchema(add, { definitions: { quantity, notice } })],
    ["list.schema.json", toJsonSchema(list, { definitions: { quantity } })],
    ["flight.schema.json", toJsonSchema(flight, { definitions: { quantity, notice } })],
    ["change.schema.json", toJsonSchema(change)],
    ["recheck.schema.json", toJsonSchema(recheck, { definitions: { quantity } })],
    ["verify.schema.json", toJsonSchema(verify)],
    ["export.schema.json", toJsonSchema(exported)],
  ]);
}
