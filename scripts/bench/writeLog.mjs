// An invented flight as a log of 12 numeric columns, from a seed: rest, run-up, climb and cruise, landing, rest.
import { closeSync, openSync, writeSync } from "node:fs";

const HEADER =
  "Time (s),Voltage (V),Current (A),Motor speed (rpm),Controller temp (C),Throttle (%),Altitude (m),Speed (m/s),Used (mAh),Cell 1 (V),Cell 2 (V),Cell 3 (V)\n";
const BYTES_AT_ONCE = 1 << 20;

export function writeLog(file, rows, rateHz, seed) {
  const random = randomFrom(seed);
  const noise = (size) => size * (random() + random() + random() + random() - 2) * 1.7;
  const seconds = rows / rateHz;
  const capacityMah = 5000 * Math.max(1, seconds / 400);
  const state = { usedMah: 0, celsius: 18, height: 0, speed: 0, cruise: 0.5 };
  const descriptor = openSync(file, "w");
  let text = HEADER;
  for (let row = 0; row < rows; row++) {
    if (row % Math.max(1, Math.round(6 * rateHz)) === 0) state.cruise = 0.4 + 0.5 * random();
    text += rowAt(row / rateHz, seconds, 1 / rateHz, state, capacityMah, noise);
    if (text.length < BYTES_AT_ONCE) continue;
    writeSync(descriptor, text);
    text = "";
  }
  writeSync(descriptor, text);
  closeSync(descriptor);
}

/** Linear congruences (Press and others, Numerical Recipes, 1992, section 7.1: the "quick and dirty" one). */
function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

function rowAt(atS, seconds, stepS, state, capacityMah, noise) {
  const share = atS / seconds;
  const throttle = throttleAt(share, state.cruise) + (share > 0.09 && share < 0.88 ? noise(0.03) : 0);
  const duty = Math.min(1, Math.max(0, throttle));
  const amps = Math.max(0, 60 * duty ** 3 + 1.5 * duty + 0.4 + noise(0.3));
  state.usedMah += (amps * stepS) / 3.6;
  const volts = 8 * (3.55 + 0.62 * (1 - state.usedMah / capacityMah)) - 0.04 * amps + noise(0.01);
  const rpm = duty === 0 ? 0 : Math.round(230 * 0.92 * volts * duty * (1 - 0.05 * duty) + noise(5));
  state.celsius += ((18 + 0.02 * amps * amps - state.celsius) * stepS) / 60;
  const isUp = share > 0.065 && share < 0.88;
  state.height += ((isUp ? 60 + 20 * Math.sin(atS / 15) : 0) - state.height) * Math.min(1, stepS / 8);
  state.speed += ((isUp ? 18 + 4 * Math.sin(atS / 7) : 0) - state.speed) * Math.min(1, stepS / 3);
  const cells = [1, 2, 3].map(() => (volts / 8 + noise(0.002)).toFixed(3));
  const motion = [state.height + noise(0.1), Math.max(0, state.speed + noise(0.1))].map((value) =>
    value.toFixed(1),
  );
  const power = [atS.toFixed(3), volts.toFixed(2), amps.toFixed(2), rpm, state.celsius.toFixed(1)];
  return `${[...power, Math.round(100 * duty), ...motion, Math.round(state.usedMah), ...cells].join(",")}\n`;
}

function throttleAt(share, cruise) {
  if (share < 0.04 || share >= 0.92) return 0;
  if (share < 0.06) return 0.08;
  if (share < 0.09) return 1;
  return share < 0.88 ? cruise : 0.12;
}
