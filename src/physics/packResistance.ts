/**
 * Direct-current resistance of a cell or pack from two loads, ohm: (U1 - U2) / (I2 - I1), the procedure of
 * IEC 61960-3:2017 (0.2 It for 10 s, then 1.0 It for 1 s, on a full cell). Null when the second load is not the larger.
 */
export function twoLoadResistanceOhm(
  firstV: number,
  firstA: number,
  secondV: number,
  secondA: number,
): number | null {
  return secondA > firstA ? (firstV - secondV) / (secondA - firstA) : null;
}

/** [degC, resistance over that at 25 degC]: two published cells that differ. */
type TemperaturePoint = readonly [temperatureC: number, ratio: number];

/** Arrhenius with 20 kJ/mol: the demonstration equivalent-circuit cell of PyBaMM. */
const ARRHENIUS_K = 20_000 / 8.314_462_618;
/** Lai and others 2019, as fitted in an open aircraft-design library, relative to 25 degC. */
const CYLINDRICAL_CELL: readonly TemperaturePoint[] = [
  [0, 3.545 / 0.869],
  [5, 2.113 / 0.869],
  [10, 1.507 / 0.869],
  [15, 1.188 / 0.869],
  [20, 0.995 / 0.869],
  [25, 1],
  [30, 0.779 / 0.869],
  [40, 0.663 / 0.869],
  [50, 0.591 / 0.869],
];

/**
 * How much larger a pack's resistance is at one temperature than at another: the range of two published cells
 * (10 degC against 25: 1.53 to 1.73) and their geometric mean. A caution, not a correction: a cold pack must not be
 * called an aged one. Temperatures are taken between 0 and 50 degC; beyond that the nearer end.
 */
export function resistanceRatio(
  temperatureC: number,
  referenceC = 25,
): { readonly low: number; readonly value: number; readonly high: number } {
  const arrhenius = ratioByArrhenius(temperatureC) / ratioByArrhenius(referenceC);
  const cylindrical = ratioByTable(temperatureC) / ratioByTable(referenceC);
  return {
    low: Math.min(arrhenius, cylindrical),
    value: Math.sqrt(arrhenius * cylindrical),
    high: Math.max(arrhenius, cylindrical),
  };
}

function ratioByArrhenius(temperatureC: number): number {
  return Math.exp(ARRHENIUS_K * (1 / (273.15 + clamp(temperatureC)) - 1 / 298.15));
}

function ratioByTable(temperatureC: number): number {
  const at = clamp(temperatureC);
  const right = CYLINDRICAL_CELL.findIndex(([point]) => point >= at);
  if (right === 0) return CYLINDRICAL_CELL[0]![1];
  const [leftC, leftRatio] = CYLINDRICAL_CELL[right - 1]!;
  const [rightC, rightRatio] = CYLINDRICAL_CELL[right]!;
  return leftRatio + ((at - leftC) / (rightC - leftC)) * (rightRatio - leftRatio);
}

function clamp(temperatureC: number): number {
  if (Number.isNaN(temperatureC)) throw new RangeError(`a temperature must be a number: got ${temperatureC}`);
  return Math.min(50, Math.max(0, temperatureC));
}
