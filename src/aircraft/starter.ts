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
  "flyingMassKg": 7.1, // ready to fly, packs included

  "pack": {
    "cells": 8, // in series
    "capacityMah": 5000, // all parallel packs together
    "minLoadedCellV": 3.3, // lowest volts of one cell you allow under load
    "chemistry": "lipo" // or lihv, liion, life
  },

  // What the maker's label or sheet says. These are the limits you are warned about.
  "controller": {
    "continuousA": 100,
    "burstA": 120,
    "burstS": 10,
    "limitC": 100
  },

  "motor": {
    "kv": 230, // rev/min per volt
    "windingOhm": 0.021, // winding alone, from the maker's sheet; plan and swap need it
    "noLoadA": 1.4, // current without propeller at about 10 V; plan and swap need it
    "maxPowerW": 2400,
    "polePairs": 7 // half the number of magnets
  },

  "propeller": {
    "diameterIn": 18,
    "pitchIn": 10,
    "blades": 2
  },

  // Your power budget, before the first flight. Each line you give is held against the log.
  "planned": {
    "staticCurrentA": 55,
    "staticPowerW": 1700,
    "staticRpm": 6900,
    "meanCurrentA": 24,
    "flightTimeS": 360,
    "minCellV": 3.5
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
