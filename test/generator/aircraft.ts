/** What an invented aircraft truly is. The aircraft file states it, rightly or not (`statedFacts.ts`). */
export interface TruePack {
  readonly cells: number;
  readonly capacityMah: number;
  /** Of the whole pack at 25 degC, leads to the sensor included. */
  readonly ohmicOhm: number;
  readonly fastOhm: number;
  readonly fastS: number;
  readonly slowOhm: number;
  readonly slowS: number;
  readonly maxContinuousA: number;
  /** Heat capacity of the pack, J/K. */
  readonly heatJPerK: number;
}

/** What heats the controller: the square of the current out of the pack or through the motor. */
export type TrueHeatDriver = "packCurrent" | "motorCurrent";

export interface TrueController {
  readonly continuousA: number;
  readonly burstA: number;
  readonly burstS: number;
  readonly limitC: number;
  readonly resistanceOhm: number;
  readonly driver: TrueHeatDriver;
  readonly timeConstantS: number;
  /** Steady rise per square ampere of the driver, K/A2. */
  readonly risePerA2: number;
  /** Current drawn with the motor stopped, A. */
  readonly standbyA: number;
}

export interface TrueMotor {
  /** rev/min per volt. */
  readonly kv: number;
  readonly windingOhm: number;
  /** At the speed that 10 V give. */
  readonly noLoadA: number;
  /** How the no-load current grows with speed: power of (speed / speed at 10 V). */
  readonly noLoadGrowth: number;
  readonly polePairs: number;
  readonly maxPowerW: number;
  readonly limitC: number;
}

export interface TruePropeller {
  readonly diameterIn: number;
  readonly pitchIn: number;
  readonly blades: number;
  readonly family: string;
  /** Power coefficient P / (rho n3 D5) at standstill. */
  readonly staticCp: number;
  readonly maxRpm: number;
}

export interface TrueAirframe {
  readonly massKg: number;
  readonly liftOffMS: number;
  readonly cruiseMS: number;
  /** Duty of the controller, 0 to 1. */
  readonly cruiseDuty: number;
  readonly taxiDuty: number;
}

export interface TrueAircraft {
  readonly name: string;
  readonly pack: TruePack;
  readonly controller: TrueController;
  readonly motor: TrueMotor;
  readonly propeller: TruePropeller;
  readonly airframe: TrueAirframe;
}

export interface TrueDay {
  readonly ambientC: number;
  readonly elevationM: number;
}
