import * as v from "valibot";
import { DEFAULTS } from "./defaults.ts";
import { TEXT_KEYS } from "./keys.ts";
import { number, numberOrDefault, optionalNumber, text } from "./schemaFields.ts";

export const pack = v.pipe(
  v.strictObject({
    cells: number("pack.cells"),
    capacityMah: optionalNumber("pack.capacityMah"),
    maxContinuousA: optionalNumber("pack.maxContinuousA"),
    fullCellV: optionalNumber("pack.fullCellV"),
    minLoadedCellV: optionalNumber("pack.minLoadedCellV"),
    chemistry: v.optional(
      v.pipe(
        v.picklist(["lipo", "lihv", "liion", "life"]),
        v.description(TEXT_KEYS["pack.chemistry"].what),
        v.metadata({ examples: [TEXT_KEYS["pack.chemistry"].example] }),
      ),
      DEFAULTS["pack.chemistry"].value,
    ),
    resistanceMohm: optionalNumber("pack.resistanceMohm"),
    healthPct: numberOrDefault("pack.healthPct"),
    limitC: optionalNumber("pack.limitC"),
  }),
  v.description("The flight pack as connected: cells in series, capacity of all parallel packs together."),
  v.metadata({ examples: [{ cells: 8, capacityMah: 5000 }] }),
);

export const controller = v.pipe(
  v.strictObject({
    continuousA: optionalNumber("controller.continuousA"),
    burstA: optionalNumber("controller.burstA"),
    burstS: optionalNumber("controller.burstS"),
    limitC: optionalNumber("controller.limitC"),
    resistanceMohm: optionalNumber("controller.resistanceMohm"),
  }),
  v.description("The speed controller: what it may carry and how warm it may get."),
  v.metadata({ examples: [{ continuousA: 100, limitC: 100 }] }),
);

export const motor = v.pipe(
  v.strictObject({
    kv: optionalNumber("motor.kv"),
    windingOhm: optionalNumber("motor.windingOhm"),
    noLoadA: optionalNumber("motor.noLoadA"),
    maxPowerW: optionalNumber("motor.maxPowerW"),
    limitC: optionalNumber("motor.limitC"),
    polePairs: optionalNumber("motor.polePairs"),
    count: numberOrDefault("motor.count"),
  }),
  v.description("The motor: its constants and its limits."),
  v.metadata({ examples: [{ kv: 230, polePairs: 7 }] }),
);

export const propeller = v.pipe(
  v.strictObject({
    diameterIn: optionalNumber("propeller.diameterIn"),
    pitchIn: optionalNumber("propeller.pitchIn"),
    blades: numberOrDefault("propeller.blades"),
    family: v.optional(text("propeller.family")),
    maxRpm: optionalNumber("propeller.maxRpm"),
  }),
  v.description("The propeller fitted."),
  v.metadata({ examples: [{ diameterIn: 18, pitchIn: 10, blades: 2 }] }),
);

export const planned = v.pipe(
  v.strictObject({
    staticCurrentA: optionalNumber("planned.staticCurrentA"),
    staticPowerW: optionalNumber("planned.staticPowerW"),
    staticRpm: optionalNumber("planned.staticRpm"),
    meanCurrentA: optionalNumber("planned.meanCurrentA"),
    flightTimeS: optionalNumber("planned.flightTimeS"),
    chargeUsedMah: optionalNumber("planned.chargeUsedMah"),
    minCellV: optionalNumber("planned.minCellV"),
    controllerPeakC: optionalNumber("planned.controllerPeakC"),
  }),
  v.description("The power budget you planned; each line given is judged, the others are not."),
  v.metadata({ examples: [{ staticCurrentA: 55, flightTimeS: 360 }] }),
);

export const field = v.pipe(
  v.strictObject({
    ambientC: optionalNumber("field.ambientC"),
    hotDayC: numberOrDefault("field.hotDayC"),
    elevationM: numberOrDefault("field.elevationM"),
  }),
  v.description("The place where you fly."),
  v.metadata({ examples: [{ hotDayC: 35, elevationM: 120 }] }),
);

export const sensors = v.pipe(
  v.strictObject({
    currentAccuracyPct: numberOrDefault("sensors.currentAccuracyPct"),
    voltageAccuracyPct: numberOrDefault("sensors.voltageAccuracyPct"),
    temperatureAccuracyC: numberOrDefault("sensors.temperatureAccuracyC"),
    currentScale: numberOrDefault("sensors.currentScale"),
    rpmDivisor: numberOrDefault("sensors.rpmDivisor"),
  }),
  v.description("How far the sensors can be trusted, and corrections to what they write."),
  v.metadata({ examples: [{ currentAccuracyPct: 2 }] }),
);
