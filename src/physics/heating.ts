// A body of one temperature: dT/dt = gain D - (T - Ta) / tau, D what heats it (for a controller amps squared). Valid while
// the body evens out inside faster than it cools (Biot number below 0.1: Incropera and DeWitt, Fundamentals of Heat and
// Mass Transfer, section 5.1). A probe on it lags by a pole of its own.

/** Least rise of a log, degC, and least length of it in time constants, that fix time constant and rise (simulated). */
export const LEAST_RISE_C = 8;
export const LEAST_TIME_CONSTANTS = 0.7;

/** Time constant, s, of a lump: rho V c / (h A), in SI units. */
export function lumpTimeConstantS(
  densityKgM3: number,
  volumeOverAreaM: number,
  specificHeatJKgK: number,
  filmWM2K: number,
): number {
  return (densityKgM3 * volumeOverAreaM * specificHeatJKgK) / filmWM2K;
}

/** Temperature after `timeS` on the way from `startC` to `finalC` with a time constant > 0. */
export function firstOrderC(startC: number, finalC: number, timeS: number, timeConstantS: number): number {
  return finalC + (startC - finalC) * Math.exp(-timeS / timeConstantS);
}

/** Time, s, to come from `startC` to `atC` on the way to `finalC`. NaN when `atC` is not on that way. */
export function timeToReachS(startC: number, finalC: number, atC: number, timeConstantS: number): number {
  const left = (atC - finalC) / (startC - finalC);
  return left > 0 && left <= 1 ? -timeConstantS * Math.log(left) : Number.NaN;
}

/**
 * Convolution of a driver, sampled every `stepS` and linear between samples, with the decay exp(-t / tau): the
 * temperature rise over the gain, starting from 0. Exact for such a driver, one pass.
 * @returns one value per sample, in driver units times seconds
 */
export function convolveWithDecay(
  driver: ArrayLike<number>,
  stepS: number,
  timeConstantS: number,
): Float64Array {
  const ratio = stepS / timeConstantS;
  const decay = Math.exp(-ratio);
  const gained = -timeConstantS * Math.expm1(-ratio);
  const ofLater = timeConstantS - gained / ratio;
  const ofEarlier = gained - ofLater;
  const response = new Float64Array(driver.length);
  for (let k = 1; k < driver.length; k++) {
    response[k] = response[k - 1]! * decay + driver[k - 1]! * ofEarlier + driver[k]! * ofLater;
  }
  return response;
}

/** exp(-t / tau) at the sample times. */
export function decayAt(count: number, stepS: number, timeConstantS: number): Float64Array {
  const decay = new Float64Array(count);
  for (let k = 0; k < count; k++) decay[k] = Math.exp((-k * stepS) / timeConstantS);
  return decay;
}

/**
 * What a probe with a lag of `lagS` shows of a signal sampled every `stepS`; it starts at rest on the first value.
 * A lag of 0 gives the signal itself.
 */
export function throughLag(signal: ArrayLike<number>, stepS: number, lagS: number): Float64Array {
  if (lagS === 0) return Float64Array.from(signal);
  const shown = convolveWithDecay(signal, stepS, lagS);
  const decay = Math.exp(-stepS / lagS);
  let ofFirst = signal[0] ?? 0;
  for (let k = 0; k < shown.length; k++, ofFirst *= decay) shown[k] = shown[k]! / lagS + ofFirst;
  return shown;
}

/** What settles a heating curve. */
export interface HeatingConstants {
  readonly timeConstantS: number;
  /** Steady rise per unit of the driver: gain times time constant, degC. */
  readonly steadyRise: number;
  readonly ambientC: number;
  readonly startC: number;
}

/** Temperatures of the body under a driver sampled every `stepS`. */
export function heatedTemperatures(
  driver: ArrayLike<number>,
  stepS: number,
  constants: HeatingConstants,
): Float64Array {
  const { timeConstantS, steadyRise, ambientC, startC } = constants;
  const response = convolveWithDecay(driver, stepS, timeConstantS);
  const decay = decayAt(driver.length, stepS, timeConstantS);
  return response.map(
    (value, k) => ambientC + (startC - ambientC) * decay[k]! + (steadyRise / timeConstantS) * value,
  );
}
