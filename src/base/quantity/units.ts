/** Exact by definition (kelvin and degree Celsius, SI brochure 9th edition, 2.3.1). */
export const KELVIN_AT_ZERO_CELSIUS = 273.15;
/** Exact: the international inch, 25.4 mm. */
export const METRES_PER_INCH = 0.0254;
/** Exact: the international foot, 12 inches. */
export const METRES_PER_FOOT = 0.3048;
/** Exact: the international avoirdupois pound. */
export const KILOGRAMS_PER_POUND = 0.45359237;
/** Exact: 3600 coulombs are one ampere-hour. */
export const COULOMBS_PER_MAH = 3.6;
/** Exact: 3600 joules are one watt-hour. */
export const JOULES_PER_WH = 3600;
export const SECONDS_PER_MINUTE = 60;
export const SECONDS_PER_DAY = 86_400;

/** Seconds and amperes summed: coulombs (A s) to mAh. */
export function mahFromCoulombs(chargeC: number): number {
  return chargeC / COULOMBS_PER_MAH;
}

/** Joules (W s) to Wh. */
export function whFromJoules(energyJ: number): number {
  return energyJ / JOULES_PER_WH;
}

/** rev/min to rev/s. */
export function revPerSecond(revPerMinute: number): number {
  return revPerMinute / SECONDS_PER_MINUTE;
}

export function fahrenheitFromCelsius(temperatureC: number): number {
  return temperatureC * 1.8 + 32;
}

export function celsiusFromFahrenheit(temperatureF: number): number {
  return (temperatureF - 32) / 1.8;
}
