import type { Facts } from "../../aircraft/facts.ts";
import { airDensityAt, DAY_DENSITY_RELATIVE_SD } from "../../physics/index.ts";
import type { PlanConditions } from "./conditions.ts";
import type { KnownParts } from "./knownParts.ts";
import { pathOhmOf } from "./motorFacts.ts";
import { packInputs } from "./packInputs.ts";
import type { Input, InputName } from "./planInputs.ts";
import { scaledRange } from "./range.ts";
import { AIRCRAFT_FILE, airOf, MOTOR_NOT_GIVEN } from "./sentences.ts";

/** Half-widths of constants from a data sheet, relative (common practice, no published source). */
const KV_STATED = 0.05;
const PATH_STATED = 0.3;
const NO_LOAD_STATED = 0.6;

/** Air: stated for the day, or only the usual air of the place (1 sd, degC). */
const STATED_AIR_SD_C = 2;
const USUAL_AIR_SD_C = 8;
const STANDARD_AIR_C = 15;

type PartName = Exclude<InputName, "powerCoefficient" | "cruiseShare" | "riseC" | "riseRatio" | "risePerA2">;

/** Pack, air, motor and ground charge: measured where logs give them, else stated, else common practice. */
export function partInputs(
  facts: Facts,
  known: KnownParts,
  conditions: PlanConditions,
): { readonly [name in PartName]: Input } {
  return {
    ...packInputs(facts, known, conditions),
    density: density(facts, conditions),
    ...motorInputs(facts, known),
  };
}

function density(facts: Facts, { ambientC, elevationM }: PlanConditions): Input {
  const airC = ambientC ?? facts.field.ambientC ?? STANDARD_AIR_C;
  const sdC = ambientC === null ? USUAL_AIR_SD_C : STATED_AIR_SD_C;
  const halfWidth = 2 * Math.hypot(DAY_DENSITY_RELATIVE_SD, sdC / (airC + 273.15));
  const heightM = elevationM ?? facts.field.elevationM;
  return scaledRange(airDensityAt(heightM, airC), 1 - halfWidth, 1 + halfWidth, airOf(airC, heightM));
}

function motorInputs(
  facts: Facts,
  known: KnownParts,
): { readonly kv: Input; readonly pathOhm: Input; readonly noLoadA: Input } {
  const { kv, noLoadA } = facts.motor;
  const pathOhm = pathOhmOf(facts);
  const stated = (value: number | null, halfWidth: number): Input =>
    value === null
      ? { why: MOTOR_NOT_GIVEN }
      : scaledRange(value, 1 - halfWidth, 1 + halfWidth, AIRCRAFT_FILE);
  return {
    kv: kv !== null && known.kv !== null ? known.kv : stated(kv, KV_STATED),
    pathOhm: stated(pathOhm, PATH_STATED),
    noLoadA: stated(noLoadA, NO_LOAD_STATED),
  };
}
