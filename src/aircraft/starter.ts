import { EXAMPLE_NUMBERS } from "./exampleNumbers.ts";

const { controller, motor, planned } = EXAMPLE_NUMBERS;

/**
 * A commented aircraft file to start from. It reads without an edit, and every number in it is an example
 * to be replaced by the pilot's own.
 */
export function starterAircraftFile(name: string): string {
  return `{
  // Everything here is an example: put in your own numbers, delete the lines you do not know.
  // Only "name" and "pack.cells" are required. What is missing is shown as not known, never guessed.
  "$schema": "./aircraft.schema.json",
  "name": ${JSON.stringify(name)},
  "flyingMassKg": 4.6, // ready to fly, packs included

  "pack": {
    "cells": 6, // in series
    "capacityMah": 4200, // all parallel packs together
    "minLoadedCellV": 3.3, // lowest volts of one cell you allow under load
    "chemistry": "lipo" // or lihv, liion, life
  },

  // What the maker's label or sheet says. These are the limits you are warned about.
  "controller": {
    "continuousA": ${controller.continuousA},
    "burstA": ${controller.burstA},
    "burstS": ${controller.burstS},
    "limitC": ${controller.limitC}
  },

  "motor": {
    "kv": ${motor.kv}, // rev/min per volt
    "windingOhm": ${motor.windingOhm}, // winding alone, from the maker's sheet; plan and swap need it
    "noLoadA": ${motor.noLoadA}, // current without propeller at about 10 V; plan and swap need it
    "maxPowerW": ${motor.maxPowerW},
    "polePairs": 7 // half the number of magnets
  },

  "propeller": {
    "diameterIn": 15,
    "pitchIn": 8,
    "blades": 2
  },

  // Your power budget, before the first flight. Each line you give is held against the log.
  "planned": {
    "staticCurrentA": ${planned.staticCurrentA},
    "staticPowerW": ${planned.staticPowerW},
    "staticRpm": ${planned.staticRpm},
    "meanCurrentA": ${planned.meanCurrentA},
    "flightTimeS": ${planned.flightTimeS},
    "minCellV": ${planned.minCellV}
  },

  "reservePct": 25, // share of the charge to land with

  "field": {
    "hotDayC": 35, // the hottest day you fly on
    "elevationM": 120
  },

  // Two standard deviations of your sensors, from their sheets; they decide how wide the intervals are.
  "sensors": {
    "currentAccuracyPct": 5,
    "voltageAccuracyPct": 1,
    "temperatureAccuracyC": 3
  }
}
`;
}
