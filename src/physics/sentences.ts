/** Remarks that travel with a predicted coefficient or a cell voltage. */

export function familyNotKnown(family: string | null, kinds: readonly string[]): string {
  const said =
    family === null ? "no propeller family is given" : `the family "${family}" is not one measured`;
  return `${said}: taken over all kinds, so the interval is wide (known: ${kinds.join(", ")})`;
}

export function outsideMeasured(
  what: string,
  value: number,
  low: number,
  high: number,
  kind: string,
): string {
  return `${what} ${round(value)} lies outside the ${round(low)} to ${round(high)} measured for ${kind}: widened`;
}

export function scaledForBlades(blades: number): string {
  return `scaled from two to ${blades} blades by a rule of the trade without a published source: widened`;
}

export function chemistryFromPractice(chemistry: string): string {
  return `no published rest-voltage curve is used for ${chemistry}: a wide band from common practice`;
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}
