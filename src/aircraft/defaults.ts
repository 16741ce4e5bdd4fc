const COMMON_PRACTICE = "common practice, no published source";

/** What is assumed when the aircraft file does not say, and where the number comes from. */
export const DEFAULTS = {
  "pack.chemistry": { value: "lipo", source: COMMON_PRACTICE },
  "pack.healthPct": { value: 100, source: "a pack is taken as new until its owner says otherwise" },
  "motor.count": { value: 1, source: "one motor unless stated" },
  "propeller.blades": { value: 2, source: COMMON_PRACTICE },
  reservePct: { value: 25, source: `a quarter of the charge left at landing: ${COMMON_PRACTICE}` },
  "field.hotDayC": { value: 35, source: `a hot summer day: ${COMMON_PRACTICE}` },
  "field.elevationM": { value: 0, source: "sea level unless stated" },
  "sensors.currentAccuracyPct": { value: 5, source: `a hobby current sensor as bought: ${COMMON_PRACTICE}` },
  "sensors.voltageAccuracyPct": { value: 1, source: `a hobby voltage input as bought: ${COMMON_PRACTICE}` },
  "sensors.temperatureAccuracyC": { value: 3, source: `a small stuck-on probe: ${COMMON_PRACTICE}` },
  "sensors.currentScale": { value: 1, source: "the log is taken at its word" },
  "sensors.rpmDivisor": { value: 1, source: "the log is taken at its word" },
} as const;

/** Volts of one full cell by chemistry (common practice, no published source). */
export const FULL_CELL_V = { lipo: 4.2, lihv: 4.35, liion: 4.2, life: 3.6 } as const;
export const FULL_CELL_V_SOURCE = `the usual full-charge voltage of the chemistry: ${COMMON_PRACTICE}`;

export type DefaultPath = keyof typeof DEFAULTS;

/** Where the default of a key comes from, or null for a key without default. */
export function defaultSource(path: string): string | null {
  if (path === "pack.fullCellV") return FULL_CELL_V_SOURCE;
  return path in DEFAULTS ? DEFAULTS[path as DefaultPath].source : null;
}
