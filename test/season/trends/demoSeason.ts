import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { TrendFlight } from "../../../src/season/trends/index.ts";
import { aircraftOf, bookFlights } from "./bookFlights.ts";

interface NotedLog {
  readonly file: string;
  readonly flights: readonly number[];
  readonly pack: string;
  readonly propeller: string;
  readonly ambientC: number;
  readonly putBackMah: number | null;
  readonly date: string;
}

const folder = resolve(import.meta.dirname, "../../../fixtures/tern");
const textOf = (file: string) => readFileSync(resolve(folder, file), "utf8");

export const TERN_AIRCRAFT = aircraftOf(textOf("aircraft.json"));

/** The demo season as a book holds it, with the pilot's own notes. */
export function demoSeason(): readonly TrendFlight[] {
  const { logs } = JSON.parse(textOf("season.json")) as { logs: readonly NotedLog[] };
  return logs.flatMap(({ file, flights, pack, propeller, ambientC, putBackMah, date }) => {
    const numbers = flights.map((number) => `flight-${String(number).padStart(2, "0")}`);
    const names = numbers.length === 0 ? [file.replace(/\.csv$/, "")] : numbers;
    const given = { pack, propeller, ambientC, putBackMah, putBackFlights: names, date };
    return bookFlights(readFileSync(resolve(folder, file)), TERN_AIRCRAFT, names, given);
  });
}

interface TruthOfLogs {
  readonly logs: readonly {
    readonly pack: string;
    readonly propeller: string;
    readonly parts: Readonly<
      Record<"packResistanceMohm" | "controllerRisePerA2" | "propellerPowerCoefficient", number>
    >;
    readonly flights: readonly {
      readonly flightTimeS: number | null;
      readonly chargeUsedMah: number;
      readonly flightChargeMah: number | null;
    }[];
  }[];
}

/** What truly happened, by the simulator that wrote the logs. */
export function ternTruth(): TruthOfLogs {
  return JSON.parse(textOf("truth.json")) as TruthOfLogs;
}
