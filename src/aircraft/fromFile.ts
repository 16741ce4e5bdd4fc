import type { ChannelName } from "../base/channels/index.ts";
import type { Budget, PlannedPropeller } from "./budget.ts";
import { FULL_CELL_V } from "./defaults.ts";
import type { Facts } from "./facts.ts";
import type { RememberedReading } from "./readings.ts";
import type { AircraftFile } from "./schema.ts";

/** What is fitted: the file's numbers, the defaults where it is silent, null where there is no default. */
export function factsOf(given: AircraftFile): Facts {
  const { pack, controller, motor, propeller, field } = given;
  return {
    name: given.name,
    flyingMassKg: given.flyingMassKg ?? null,
    pack: {
      cells: pack.cells,
      capacityMah: pack.capacityMah ?? null,
      maxContinuousA: pack.maxContinuousA ?? null,
      fullCellV: pack.fullCellV ?? FULL_CELL_V[pack.chemistry],
      minLoadedCellV: pack.minLoadedCellV ?? null,
      chemistry: pack.chemistry,
      resistanceMohm: pack.resistanceMohm ?? null,
      healthPct: pack.healthPct,
      limitC: pack.limitC ?? null,
    },
    controller: {
      continuousA: controller.continuousA ?? null,
      burstA: controller.burstA ?? null,
      burstS: controller.burstS ?? null,
      limitC: controller.limitC ?? null,
      resistanceMohm: controller.resistanceMohm ?? null,
    },
    motor: {
      kv: motor.kv ?? null,
      windingOhm: motor.windingOhm ?? null,
      noLoadA: motor.noLoadA ?? null,
      maxPowerW: motor.maxPowerW ?? null,
      limitC: motor.limitC ?? null,
      polePairs: motor.polePairs ?? null,
      count: motor.count,
    },
    propeller: {
      diameterIn: propeller.diameterIn ?? null,
      pitchIn: propeller.pitchIn ?? null,
      blades: propeller.blades,
      family: propeller.family ?? null,
      maxRpm: propeller.maxRpm ?? null,
    },
    field: { ambientC: field.ambientC ?? null, hotDayC: field.hotDayC, elevationM: field.elevationM },
    sensors: given.sensors,
  };
}

/** What was planned; a line the pilot did not plan is null. */
export function budgetOf({ planned, reservePct, propeller }: AircraftFile): Budget {
  return {
    planned: {
      staticCurrentA: planned.staticCurrentA ?? null,
      staticPowerW: planned.staticPowerW ?? null,
      staticRpm: planned.staticRpm ?? null,
      meanCurrentA: planned.meanCurrentA ?? null,
      flightTimeS: planned.flightTimeS ?? null,
      chargeUsedMah: planned.chargeUsedMah ?? null,
      minCellV: planned.minCellV ?? null,
      controllerPeakC: planned.controllerPeakC ?? null,
    },
    reservePct,
    plannedFor: plannedPropeller(propeller),
  };
}

function plannedPropeller({
  diameterIn,
  pitchIn,
  blades,
}: AircraftFile["propeller"]): PlannedPropeller | null {
  return diameterIn === undefined || pitchIn === undefined ? null : { diameterIn, pitchIn, blades };
}

export function readingsOf({ readings }: AircraftFile): readonly RememberedReading[] {
  return readings.map(({ columns, units, ...rest }) => ({
    ...rest,
    columns: givenOnly(columns),
    units: givenOnly(units),
  }));
}

function givenOnly(texts: Partial<Record<string, string>>): Partial<Record<ChannelName, string>> {
  return Object.fromEntries(Object.entries(texts).filter(([, text]) => text !== undefined));
}
