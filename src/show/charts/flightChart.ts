import type { PanelLimit, PanelSeries } from "./panel.ts";

/** One value at a flight, or of a group of neighbouring flights. */
export interface FlightPoint {
  /** Place of the flight on the shared axis; of a group its first and last. */
  readonly fromPlace: number;
  readonly toPlace: number;
  readonly value: number;
  /** Ends of the interval; null where it has none. */
  readonly low: number | null;
  readonly high: number | null;
}

/** One series of points; `style` 1 to 4 chooses colour, dash and marker together. */
export interface FlightSeries {
  readonly id: string;
  /** Direct label in the right margin. */
  readonly words: string;
  readonly style: PanelSeries["style"];
  readonly points: readonly FlightPoint[];
}

/** A change of what is fitted: a line before the flight at `place`, with the new part's name. */
export interface FlightBreak {
  readonly place: number;
  readonly words: string;
}

/** The axis that every chart of a season shares: one place a flight, in the order of flying. */
export interface FlightAxis {
  readonly places: number;
  /** Labels below, at most about ten: the flight's number. */
  readonly ticks: readonly { readonly place: number; readonly words: string }[];
  /** Days of a few flights, below the numbers. */
  readonly days: readonly { readonly place: number; readonly words: string }[];
}

/** A chart over flights, not over time: a flight takes one place however long ago it was. */
export interface FlightChart {
  readonly id: string;
  readonly axis: FlightAxis;
  readonly startsAtZero: boolean;
  readonly series: readonly FlightSeries[];
  readonly limits: readonly PanelLimit[];
  /** Planned numbers: a line without teeth. */
  readonly plans: readonly { readonly value: number; readonly words: string }[];
  readonly breaks: readonly FlightBreak[];
}

/** Room before the first and after the last flight, in places. */
const ROOM = 0.6;

export function axisSpan({ places }: FlightAxis): { readonly fromX: number; readonly toX: number } {
  return { fromX: -ROOM, toX: Math.max(places, 1) - 1 + ROOM };
}

/** Where a point is drawn: in the middle of its group. */
export function middlePlace({ fromPlace, toPlace }: FlightPoint): number {
  return (fromPlace + toPlace) / 2;
}
