/** The questions of the aircraft form, each with the keys that answer it, in the order asked. */
export const AIRCRAFT_GROUPS: readonly { readonly question: string; readonly keys: readonly string[] }[] = [
  {
    question: "Which aircraft is it?",
    keys: ["name", "flyingMassKg"],
  },
  {
    question: "What is fitted?",
    keys: [
      "pack.cells",
      "pack.capacityMah",
      "pack.chemistry",
      "pack.fullCellV",
      "pack.resistanceMohm",
      "pack.healthPct",
      "motor.kv",
      "motor.windingOhm",
      "motor.noLoadA",
      "motor.polePairs",
      "motor.count",
      "controller.resistanceMohm",
      "propeller.diameterIn",
      "propeller.pitchIn",
      "propeller.blades",
      "propeller.family",
    ],
  },
  {
    question: "What may it draw, and how fast may it turn?",
    keys: [
      "controller.continuousA",
      "controller.burstA",
      "controller.burstS",
      "pack.maxContinuousA",
      "pack.minLoadedCellV",
      "motor.maxPowerW",
      "propeller.maxRpm",
    ],
  },
  {
    question: "How warm may it get?",
    keys: ["controller.limitC", "motor.limitC", "pack.limitC"],
  },
  {
    question: "How long must it last?",
    keys: ["planned.flightTimeS", "reservePct", "planned.chargeUsedMah", "planned.meanCurrentA"],
  },
  {
    question: "What did you plan for full throttle?",
    keys: [
      "planned.staticCurrentA",
      "planned.staticPowerW",
      "planned.staticRpm",
      "planned.minCellV",
      "planned.controllerPeakC",
    ],
  },
  {
    question: "Where does it fly?",
    keys: ["field.ambientC", "field.hotDayC", "field.elevationM"],
  },
];

/** Keys that no question above names: how good the sensors are, and whatever a later release adds. */
export const OTHER_QUESTION = "How good are the sensors, and how are logs read?";

/** Temperatures that are a difference, not a place on the scale. */
export const DIFFERENCES: readonly string[] = ["sensors.temperatureAccuracyC"];
