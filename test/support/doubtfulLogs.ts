import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const DEMO_LOG = resolve(import.meta.dirname, "../../fixtures/tern/flight-09.csv");
const CURRENT = 2;

/** The demo's ninth flight with each current, in amperes, replaced; nothing else moves. */
export function withCurrents(changed: (amps: number) => number): string {
  return readFileSync(DEMO_LOG, "utf8")
    .split("\n")
    .map((line) => {
      const cells = line.split("\t");
      const milliamps = Number(cells[CURRENT]);
      if (cells.length < 8 || cells[CURRENT] === "" || Number.isNaN(milliamps)) return line;
      cells[CURRENT] = String(Math.round(1000 * changed(milliamps / 1000)));
      return cells.join("\t");
    })
    .join("\n");
}

/** A sensor whose setting is ten times off. */
export const tenthOfCurrent = (): string => withCurrents((amps) => amps / 10);
/** A sensor that reads no higher than 30 A. */
export const clippedCurrent = (): string => withCurrents((amps) => Math.min(amps, 30));
/** A log that ends under power. */
export const cutShort = (log: string): string => log.split("\n").slice(0, 1000).join("\n");
