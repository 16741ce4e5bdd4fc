export {
  AIR_GAS_CONSTANT,
  airDensity,
  airDensityAt,
  DAY_DENSITY_RELATIVE_SD,
  geopotentialHeightM,
  SEA_LEVEL_DENSITY,
  SEA_LEVEL_PRESSURE_PA,
  SEA_LEVEL_TEMPERATURE_K,
  standardPressurePa,
  standardTemperatureK,
} from "./air.ts";
export { chemistryRemark } from "./chemistryBand.ts";
export type { CoefficientName, FitGroup } from "./coefficientFit.ts";
export { type FullThrottle, fullThrottleEquilibrium, type PowerTrain } from "./equilibrium.ts";
export {
  convolveWithDecay,
  decayAt,
  firstOrderC,
  type HeatingConstants,
  heatedTemperatures,
  LEAST_RISE_C,
  LEAST_TIME_CONSTANTS,
  lumpTimeConstantS,
  throughLag,
  timeToReachS,
} from "./heating.ts";
export { type LoadRatio, loadRatio } from "./loadRatio.ts";
export { type MeasuredCoefficient, predictBesideMeasured } from "./measuredNeighbour.ts";
export {
  backVoltageV,
  bestEfficiencyCurrentA,
  kvFromFullThrottle,
  LEAST_DUTY_FOR_EFFICIENCY,
  type MotorConstants,
  type MotorPoint,
  type MotorState,
  motorCurrentA,
  motorPoint,
  motorState,
  NO_LOAD_VOLTS,
  noLoadCurrentA,
} from "./motor.ts";
export { type Band, openCircuitCellV, stateOfChargeBandPct } from "./openCircuit.ts";
export { resistanceRatio, twoLoadResistanceOhm } from "./packResistance.ts";
export {
  advanceRatio,
  powerCoefficient,
  propellerPowerW,
  propellerThrustN,
  propellerTorqueNm,
  propulsiveEfficiency,
  staticFigureOfMerit,
  thrustCoefficient,
} from "./propeller.ts";
export type { Chemistry } from "./restVoltageCurves.ts";
export { PROPELLER_KINDS, type PropellerKind } from "./staticMeans.ts";
export {
  fitGroup,
  measuredShapes,
  type PredictedCoefficient,
  type PropellerShape,
  predictStaticPowerCoefficient,
  predictStaticThrustCoefficient,
} from "./staticPrediction.ts";
