const ROWS = 600;
const STEP_S = 0.2;

/** A short clean log: rest, run-up, two minutes of power, rest. Eight cells, five rows a second. */
export function sampleLog(): string {
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const current = row < 30 || row > 560 ? 0.3 : row < 80 ? 50 : 22 + (row % 7) * 0.4;
    const volts = 33.4 - current * 0.04 - row * 0.002;
    const speed = current < 1 ? 0 : 900 * Math.sqrt(current);
    const warmth = 20 + Math.min(row, 560) * 0.03;
    const cells = [row * STEP_S, volts, current, speed, warmth].map((value) => value.toFixed(2));
    return cells.join(",");
  });
  return ["time_s,pack_v,current_a,rpm,esc_temp_c", ...rows, ""].join("\n");
}

/** The same rows without their clock: a choice is needed. */
export function sampleLogWithoutTime(): string {
  const lines = sampleLog().split("\n");
  return lines.map((line) => line.split(",").slice(1).join(",")).join("\n");
}

export const SAMPLE_AIRCRAFT = `{
  // invented
  "name": "Heron",
  "pack": { "cells": 8, "capacityMah": 5000, "minLoadedCellV": 3.3 },
  "controller": { "continuousA": 100, "limitC": 100 },
}`;
