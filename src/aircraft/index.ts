export { DEFAULTS, type DefaultPath, defaultSource, FULL_CELL_V } from "./defaults.ts";
export { type AircraftValues, aircraftValues, editedAircraft } from "./editAircraft.ts";
export { type ExamplePart, examplePartsLeft } from "./exampleNumbers.ts";
export { type AircraftKey, aircraftKeys } from "./formKeys.ts";
export { type AircraftNotRead, parseAircraftFile, type ReadAircraft } from "./parseAircraftFile.ts";
export type { RememberedReading } from "./readings.ts";
export { withRememberedReading } from "./rememberReading.ts";
export { aircraftSchema } from "./schema.ts";
export { starterAircraftFile } from "./starter.ts";
