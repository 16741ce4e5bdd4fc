import { KELVIN_AT_ZERO_CELSIUS } from "../base/quantity/index.ts";

// Standard atmosphere, ISO 2533:1975, section 2: primary constants and the layer below 11 km.
/** Pressure at mean sea level, Pa. */
export const SEA_LEVEL_PRESSURE_PA = 101_325;
/** Temperature at mean sea level, K. */
export const SEA_LEVEL_TEMPERATURE_K = 288.15;
/** Density at mean sea level, kg/m3. */
export const SEA_LEVEL_DENSITY = 1.225;
/** Specific gas constant of dry air, J/(kg K). */
export const AIR_GAS_CONSTANT = 287.052_87;
const GRAVITY_MS2 = 9.806_65;
const LAPSE_K_PER_M = 0.0065;
/** Nominal radius of the earth, m. */
const EARTH_RADIUS_M = 6_356_766;
const LOWEST_M = -5_000;
const HIGHEST_M = 11_000;

/**
 * One standard deviation of the day's air density about `airDensityAt`, relative: pressure systems and humidity
 * each move it by about one per cent (common practice, no published source).
 */
export const DAY_DENSITY_RELATIVE_SD = 0.012;

/** Geopotential height of a height above mean sea level, both in m (ISO 2533, equation 8). */
export function geopotentialHeightM(geometricHeightM: number): number {
  return (EARTH_RADIUS_M * geometricHeightM) / (EARTH_RADIUS_M + geometricHeightM);
}

/**
 * Standard temperature, K, at a geopotential height of -5000 to 11000 m.
 * @throws RangeError outside that
 */
export function standardTemperatureK(geopotentialM: number): number {
  if (!(geopotentialM >= LOWEST_M && geopotentialM <= HIGHEST_M)) {
    throw new RangeError(`a height must lie between ${LOWEST_M} and ${HIGHEST_M} m: got ${geopotentialM}`);
  }
  return SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * geopotentialM;
}

/** Standard pressure, Pa, at a geopotential height (ISO 2533, equation 12). @throws RangeError as above */
export function standardPressurePa(geopotentialM: number): number {
  const exponent = GRAVITY_MS2 / (AIR_GAS_CONSTANT * LAPSE_K_PER_M);
  return SEA_LEVEL_PRESSURE_PA * (standardTemperatureK(geopotentialM) / SEA_LEVEL_TEMPERATURE_K) ** exponent;
}

/** Density of dry air, kg/m3: p / (R T). Humid air is up to one per cent lighter. */
export function airDensity(pressurePa: number, temperatureC: number): number {
  return pressurePa / (AIR_GAS_CONSTANT * (temperatureC + KELVIN_AT_ZERO_CELSIUS));
}

/**
 * Density of the air, kg/m3, at a field `elevationM` above mean sea level (geometric) on a day of `temperatureC`:
 * standard pressure there, with the day's temperature. @throws RangeError for elevations outside -5 to 11 km
 */
export function airDensityAt(elevationM: number, temperatureC: number): number {
  return airDensity(standardPressurePa(geopotentialHeightM(elevationM)), temperatureC);
}
