// Propeller coefficients as the UIUC propeller data site defines them (Selig and Ananda, UILU-ENG 15-0501, 2015,
// equations 1 to 4; Dantsker and others, AIAA 2022-4020, equations 1 to 7).
// Everywhere: speed in revolutions per SECOND, diameter in m, air density in kg/m3.

/** Shaft power, W: CP rho n^3 D^5. */
export function propellerPowerW(
  powerCoefficient: number,
  density: number,
  speedRevPerS: number,
  diameterM: number,
): number {
  return powerCoefficient * density * speedRevPerS ** 3 * diameterM ** 5;
}

/** Power coefficient CP = P / (rho n^3 D^5). */
export function powerCoefficient(
  shaftPowerW: number,
  density: number,
  speedRevPerS: number,
  diameterM: number,
): number {
  return shaftPowerW / (density * speedRevPerS ** 3 * diameterM ** 5);
}

/** Thrust, N: CT rho n^2 D^4. */
export function propellerThrustN(
  thrustCoefficient: number,
  density: number,
  speedRevPerS: number,
  diameterM: number,
): number {
  return thrustCoefficient * density * speedRevPerS ** 2 * diameterM ** 4;
}

/** Thrust coefficient CT = T / (rho n^2 D^4). */
export function thrustCoefficient(
  thrustN: number,
  density: number,
  speedRevPerS: number,
  diameterM: number,
): number {
  return thrustN / (density * speedRevPerS ** 2 * diameterM ** 4);
}

/** Shaft torque, N m: P / (2 pi n). */
export function propellerTorqueNm(shaftPowerW: number, speedRevPerS: number): number {
  return shaftPowerW / (2 * Math.PI * speedRevPerS);
}

/** Advance ratio J = V / (n D). */
export function advanceRatio(airspeedMs: number, speedRevPerS: number, diameterM: number): number {
  return airspeedMs / (speedRevPerS * diameterM);
}

/** Propulsive efficiency, 0 to 1 while pulling: J CT / CP. */
export function propulsiveEfficiency(advance: number, thrustCoeff: number, powerCoeff: number): number {
  return (advance * thrustCoeff) / powerCoeff;
}

/** Static figure of merit CT^1.5 sqrt(2 / pi) / CP: ideal (momentum theory) over real power at rest. */
export function staticFigureOfMerit(thrustCoeff: number, powerCoeff: number): number {
  return (thrustCoeff ** 1.5 * Math.sqrt(2 / Math.PI)) / powerCoeff;
}
