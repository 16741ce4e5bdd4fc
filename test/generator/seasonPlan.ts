import type { TrueAircraft } from "./aircraft.ts";
import { TERN } from "./namedAircraft.ts";
import type { DropOut, LoggedChannel } from "./sensors.ts";
import type { LogStyleKey } from "./styles.ts";

export const SEASON_SEED = 20_260_412;

/** The floatplane with its first propeller: lighter load, so the pilot holds more throttle. */
const TERN_18X8: TrueAircraft = {
  ...TERN,
  propeller: { ...TERN.propeller, pitchIn: 8, staticCp: 0.0358 },
  airframe: { ...TERN.airframe, cruiseDuty: 0.905 },
};

const TERN_18X10: TrueAircraft = TERN;

export const SEASON_AIRCRAFT = { "18x8": TERN_18X8, "18x10": TERN_18X10 } as const;

export type SeasonPropeller = keyof typeof SEASON_AIRCRAFT;
export type SeasonPack = "A" | "B";

/** One log of the season. A log of two flights has two numbers. */
export interface SeasonLog {
  readonly file: string;
  /** Flight numbers in the log; empty for the bench run. */
  readonly flights: readonly number[];
  readonly date: string;
  readonly clock: string;
  readonly propeller: SeasonPropeller;
  readonly pack: SeasonPack;
  /** How often the pack was charged for a flight before, this season. */
  readonly packCycle: number;
  readonly ambientC: number;
  readonly style: LogStyleKey;
  readonly rateHz: number;
  readonly more: readonly LoggedChannel[];
  readonly hasPutBack: boolean;
  readonly note: string;
  readonly dropOuts?: readonly DropOut[];
  /** The log ends here, in flight, s. */
  readonly endS?: number;
  readonly touchAndGo?: boolean;
  /** Throttle in the circuits against the usual; default 1. */
  readonly workload?: number;
}

const ALTITUDE: readonly LoggedChannel[] = ["altitude", "airspeed"];

const day = (
  number: number,
  date: string,
  clock: string,
  propeller: SeasonPropeller,
  pack: SeasonPack,
  packCycle: number,
  ambientC: number,
) => ({
  file: `flight-${String(number).padStart(2, "0")}.csv`,
  flights: [number],
  date,
  clock,
  propeller,
  pack,
  packCycle,
  ambientC,
});

/** A bench run, then 14 flights from a cool April to a hot July. */
export const SEASON_LOGS: readonly SeasonLog[] = [
  {
    ...day(0, "2026-04-11", "16:05:10", "18x8", "B", 0, 12.4),
    file: "bench-run.csv",
    flights: [],
    style: "isoTimesInUtf16",
    rateHz: 10,
    more: [],
    hasPutBack: false,
    note: "on the slipway, floats tied down",
  },
  {
    ...day(1, "2026-04-12", "10:12:20", "18x8", "A", 0, 9.6),
    style: "plainWords",
    rateHz: 5,
    more: ALTITUDE,
    hasPutBack: true,
    note: "first flight, calm",
  },
  {
    ...day(2, "2026-04-12", "11:02:45", "18x8", "B", 1, 11.3),
    style: "plainWords",
    rateHz: 5,
    more: ALTITUDE,
    hasPutBack: false,
    note: "",
  },
  {
    ...day(3, "2026-04-26", "15:30:05", "18x8", "A", 1, 13.2),
    style: "symbolsWithDecimalComma",
    rateHz: 5,
    more: ["altitude", "chargeCounter"],
    hasPutBack: true,
    note: "",
  },
  {
    ...day(4, "2026-05-03", "09:48:30", "18x8", "A", 2, 14.1),
    style: "pipesInFahrenheit",
    rateHz: 5,
    more: [],
    hasPutBack: false,
    note: "no altitude sensor on board",
    touchAndGo: true,
  },
  {
    ...day(5, "2026-05-10", "14:20:00", "18x8", "B", 2, 16.8),
    style: "dateAndClockWithExtras",
    rateHz: 5,
    more: ["altitude"],
    hasPutBack: true,
    note: "",
  },
  {
    ...day(6, "2026-05-10", "15:11:40", "18x8", "A", 3, 17.5),
    style: "dateAndClockWithExtras",
    rateHz: 5,
    more: ["altitude"],
    hasPutBack: false,
    note: "receiver aerial badly placed: dropouts",
    dropOuts: [
      { startS: 128.1, lengthS: 3.4, kind: "blank" },
      { startS: 201.3, lengthS: 12.2, kind: "blank" },
      { startS: 262.5, lengthS: 5.1, kind: "rows" },
      { startS: 330.9, lengthS: 2.9, kind: "blank" },
    ],
  },
  {
    ...day(7, "2026-05-24", "11:00:15", "18x8", "A", 4, 19.7),
    file: "flight-07-08.csv",
    flights: [7, 8],
    style: "plainWords",
    rateHz: 5,
    more: ALTITUDE,
    hasPutBack: true,
    note: "two short flights on one charge, logger left on",
  },
  {
    ...day(9, "2026-06-07", "10:33:50", "18x10", "A", 5, 21.4),
    style: "tabsWithUnitsRow",
    rateHz: 5,
    more: ["altitude"],
    hasPutBack: true,
    note: "first flight on the 18x10",
  },
  {
    ...day(10, "2026-06-14", "09:20:10", "18x10", "A", 6, 22.9),
    style: "wholeSecondClock",
    rateHz: 5,
    more: ["airspeed"],
    hasPutBack: false,
    note: "memory card full: the log stops in flight",
    endS: 262,
  },
  {
    ...day(11, "2026-06-21", "16:41:25", "18x10", "B", 3, 25.1),
    style: "epochInMilliUnits",
    rateHz: 5,
    more: ["altitude"],
    hasPutBack: true,
    note: "",
  },
  {
    ...day(12, "2026-06-28", "17:05:35", "18x10", "A", 7, 26.3),
    style: "dottedDates",
    rateHz: 5,
    more: ["groundSpeed"],
    hasPutBack: false,
    note: "",
  },
  {
    ...day(13, "2026-07-12", "13:15:00", "18x10", "A", 8, 28.6),
    style: "plainWords",
    rateHz: 5,
    more: ALTITUDE,
    hasPutBack: false,
    note: "",
  },
  {
    ...day(14, "2026-07-19", "14:02:30", "18x10", "A", 9, 30.8),
    style: "plainWords",
    rateHz: 8,
    more: ["altitude"],
    hasPutBack: false,
    note: "hot, gusty",
    touchAndGo: true,
    workload: 1.04,
  },
];

/** Age of the packs: factor on resistance when new to the season, and growth per charge. */
export const PACK_AGE = {
  A: { atStart: 1.14, perCycle: 0.025 },
  B: { atStart: 1.06, perCycle: 0.002 },
} as const;

/** Both packs wait in a box that holds this temperature, within half a degree. */
export const PACK_BOX_C = 30;

/** The current sensor reads this share of the truth all season. */
export const SEASON_AMP_GAIN = 0.972;
