import { type ChannelName, channelFacts, isCellChannel, MOST_CELLS } from "../../base/channels/index.ts";
import { type ColumnRange, shareOutside } from "./columnRange.ts";
import { type ColumnView, headerUnit } from "./columnView.ts";
import { type Dimension, type Unit, unitOf } from "./units.ts";

/** A unit with the reason it was taken, or the units between which a choice is needed. */
export type UnitChoice =
  | {
      readonly unit: Unit;
      readonly why: string;
      readonly isFromValues: boolean;
      /** The header's own unit where the given one differs from it. */
      readonly against?: Unit;
    }
  | {
      readonly doubt: string;
      readonly options: readonly string[];
      /** Cell counts that fit the volts, likeliest first, where the count is in doubt and not the unit. */
      readonly cellCounts?: readonly number[];
    };

const NO_UNIT_IN_HEADER = "no unit in the header";

/** True of a column whose unit is neither in its header nor given. */
export function isUnitUnstated({ why }: { readonly why: string }): boolean {
  return why.includes(NO_UNIT_IN_HEADER);
}

/** Share of readings beyond the physical limits from which the unit must be wrong. */
const MOST_IMPOSSIBLE = 0.1;
/** Volts per cell that any lithium cell in a log can show. */
const CELL_V: readonly [number, number] = [2, 5];

/** A lithium cell in the middle of its charge, volts. */
const HALF_CHARGED_V = 3.85;

const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  time: "time",
  packVoltage: "voltage",
  packVoltage1: "voltage",
  packVoltage2: "voltage",
  current: "current",
  shaftSpeed: "rotation",
  throttle: "ratio",
  altitude: "length",
  airspeed: "velocity",
  groundSpeed: "velocity",
  chargeCounter: "charge",
  controllerTemperature: "temperature",
  motorTemperature: "temperature",
  packTemperature: "temperature",
  ambientTemperature: "temperature",
};

export function dimensionOf(channel: ChannelName): Dimension {
  return isCellChannel(channel) ? "voltage" : DIMENSIONS[channel]!;
}

/** The unit of a column chosen for a channel: given, else stated by the header, else the one its values allow. */
export function chooseUnit(
  channel: ChannelName,
  view: ColumnView,
  given: Unit | null,
  cells: number | null,
): UnitChoice {
  const stated = headerUnit(view, dimensionOf(channel));
  if (given !== null) return givenUnit(given, stated);
  if (channel === "throttle") return throttleUnit(view.range, stated);
  if (stated !== null) return statedUnit(channel, view, stated, cells);
  return unitFromValues(channel, view, cells);
}

function givenUnit(unit: Unit, stated: Unit | null): UnitChoice {
  if (stated === null || stated.factor === unit.factor || unit.name.endsWith("/cell")) {
    return { unit, why: "the unit was given", isFromValues: false };
  }
  const why = `the unit was given, though the header names ${stated.name}`;
  return { unit, why, isFromValues: false, against: stated };
}

/** True when the values in this unit are what such a channel shows. */
export function isPlausibleUnit(
  channel: ChannelName,
  view: ColumnView,
  unit: Unit,
  cells: number | null,
): boolean {
  return view.range.isDead || isPlausible(channel, view.range, unit, cells);
}

/** Cell counts under which the volts are those of lithium cells, the one nearest to half charge first. */
function fittingCells(packV: number): readonly number[] {
  const counts = Array.from({ length: MOST_CELLS }, (_, index) => index + 1);
  const off = (count: number) => Math.abs(packV / count - HALF_CHARGED_V);
  return counts
    .filter((count) => packV / count >= 3.3 && packV / count <= 4.25)
    .sort((a, b) => off(a) - off(b))
    .slice(0, 3);
}

/** Highest turns a minute that only thousands can mean, or thousands parted from the rest by a mark. */
const THOUSANDS_RPM: readonly [number, number] = [0.4, 60];

function isInThousands(channel: ChannelName, { range }: ColumnView, unit: Unit): boolean {
  if (channel !== "shaftSpeed" || unit.factor !== 1 || range.isDead || range.isWhole) return false;
  const { high99 } = range;
  return high99 >= THOUSANDS_RPM[0] && high99 <= THOUSANDS_RPM[1];
}

function statedUnit(channel: ChannelName, view: ColumnView, unit: Unit, cells: number | null): UnitChoice {
  if (isInThousands(channel, view, unit)) {
    const why = `the header names ${unit.name}, but no drive turns ${shown(view.range.high99)} times a minute at most: read as thousands`;
    return { unit: unitOf("rotation", "krpm")!, why, isFromValues: true };
  }
  const fits = cells === null || channel !== "packVoltage" ? [] : cellsInDoubt(view, unit, cells);
  const doubt = doubtOf(channel, view, unit, cells);
  if (doubt !== null) {
    return { doubt, options: plausibleUnits(channel, view.range, cells, unit), cellCounts: fits };
  }
  return { unit, why: `the header names ${unit.name}`, isFromValues: false };
}

/** The cell counts that fit volts which are a pack's in the header's unit, but not of this many cells. */
function cellsInDoubt(view: ColumnView, unit: Unit, cells: number): readonly number[] {
  const isPack = isPlausible("packVoltage", view.range, unit, null);
  const doubt = doubtOf("packVoltage", view, unit, cells);
  return isPack && doubt !== null ? fittingCells(view.range.median * unit.factor + unit.offset) : [];
}

/** Only volts and amps stop a reading: other channels are masked later where they are impossible. */
function doubtOf(channel: ChannelName, view: ColumnView, unit: Unit, cells: number | null): string | null {
  if (channel !== "packVoltage" && channel !== "current") return null;
  const { possible } = channelFacts(channel);
  const low = (possible[0] - unit.offset) / unit.factor;
  const high = (possible[1] - unit.offset) / unit.factor;
  const middle = view.range.median * unit.factor + unit.offset;
  if (!view.range.isDead && shareOutside(view.values, low, high) > MOST_IMPOSSIBLE) {
    return `read in ${unit.name} its middle value is ${shown(middle)} ${channelFacts(channel).unit}`;
  }
  if (channel !== "packVoltage" || cells === null || view.range.isDead) return null;
  const perCell = middle / cells;
  const isCell = perCell >= CELL_V[0] && perCell <= CELL_V[1];
  return isCell ? null : `${shown(middle)} V over ${cells} cells is ${shown(perCell)} V a cell`;
}

function unitFromValues(channel: ChannelName, view: ColumnView, cells: number | null): UnitChoice {
  const base = unitOf(dimensionOf(channel), baseSpelling(channel))!;
  const { range } = view;
  if (dimensionOf(channel) === "temperature") return temperatureUnit(range, base);
  if (channel === "chargeCounter") return chargeUnit(range, base);
  const isBase = isPlausible(channel, range, base, cells);
  if (range.isDead || isBase) {
    return {
      unit: base,
      why: `${NO_UNIT_IN_HEADER}; ${base.name} fits ${span(range)}`,
      isFromValues: false,
    };
  }
  if (channel === "altitude" || channel === "airspeed" || channel === "groundSpeed") {
    return { unit: base, why: `${NO_UNIT_IN_HEADER}, taken as ${base.name}`, isFromValues: true };
  }
  const cellCounts = channel === "packVoltage" && cells !== null ? cellsInDoubt(view, base, cells) : [];
  const fits = plausibleUnits(channel, range, cells, base);
  if (cellCounts.length > 0 && fits.length === 0) {
    return { doubt: doubtOf(channel, view, base, cells)!, options: [], cellCounts };
  }
  const only = fits.length === 1 ? unitOf(dimensionOf(channel), fits[0]!) : null;
  if (only !== null) {
    return {
      unit: only,
      why: `${NO_UNIT_IN_HEADER}; of the usual units only ${only.name} fits ${span(range)}`,
      isFromValues: true,
    };
  }
  return { doubt: `no unit in the header, and ${base.name} does not fit ${span(range)}`, options: fits };
}

function baseSpelling(channel: ChannelName): string {
  const unit = channelFacts(channel).unit;
  return unit;
}

/** Units to try, commonest first. */
const TRIED: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  voltage: ["V", "mV", "cV", "dV"],
  current: ["A", "mA", "cA", "dA"],
  rotation: ["rpm", "Hz", "krpm"],
};

/** The usual units, except `unfit`, under which the values are what such a channel shows. */
function plausibleUnits(
  channel: ChannelName,
  range: ColumnRange,
  cells: number | null,
  unfit: Unit,
): readonly string[] {
  const dimension = dimensionOf(channel);
  const tried = (TRIED[dimension] ?? []).map((name) => unitOf(dimension, name)!);
  return tried
    .filter((unit) => unit.name !== unfit.name && isPlausible(channel, range, unit, cells))
    .map((unit) => unit.name);
}

function isPlausible(channel: ChannelName, range: ColumnRange, unit: Unit, cells: number | null): boolean {
  const middle = range.median * unit.factor + unit.offset;
  const high = range.high99 * unit.factor + unit.offset;
  if (channel === "packVoltage") {
    if (cells !== null) return middle / cells >= CELL_V[0] && middle / cells <= CELL_V[1];
    return middle >= channelFacts(channel).plausible[0] && middle <= channelFacts(channel).plausible[1];
  }
  if (isCellChannel(channel)) return middle >= CELL_V[0] && middle <= CELL_V[1];
  if (channel === "current")
    return high <= channelFacts(channel).plausible[1] && high >= (unit.factor === 1 ? -5 : 2);
  if (channel === "shaftSpeed") return high <= 60_000 && high >= 400;
  return high <= channelFacts(channel).plausible[1];
}

function temperatureUnit(range: ColumnRange, celsius: Unit): UnitChoice {
  if (range.low01 > 230 && range.high99 < 450) {
    return {
      unit: unitOf("temperature", "K")!,
      why: `${NO_UNIT_IN_HEADER}; only K fits ${span(range)}`,
      isFromValues: true,
    };
  }
  if (range.low01 >= 55 || range.high99 > 150) {
    return { doubt: `no unit in the header, and ${span(range)} could be degC or degF`, options: ["C", "F"] };
  }
  return { unit: celsius, why: `${NO_UNIT_IN_HEADER}; degC fits ${span(range)}`, isFromValues: false };
}

function chargeUnit(range: ColumnRange, mah: Unit): UnitChoice {
  if (range.high99 < 30 && !range.isWhole) {
    return {
      unit: unitOf("charge", "Ah")!,
      why: `${NO_UNIT_IN_HEADER}; Ah fits ${span(range)}`,
      isFromValues: true,
    };
  }
  return { unit: mah, why: "no unit in the header, taken as mAh", isFromValues: false };
}

/** Throttle is written as 0 to 1, in per cent, or as the servo pulse of 1000 to 2000 us (common practice, no published source). */
function throttleUnit(range: ColumnRange, stated: Unit | null): UnitChoice {
  if (range.high <= 1.05 && range.low >= -1.05 && !range.isWhole) {
    return { unit: unitOf("ratio", "0-1")!, why: `${span(range)} is a share of one`, isFromValues: true };
  }
  if (range.low01 >= 700 && range.high99 <= 2300) {
    return { unit: unitOf("ratio", "us")!, why: `${span(range)} is a servo pulse in us`, isFromValues: true };
  }
  const percent = stated ?? unitOf("ratio", "%")!;
  const [low, high] = channelFacts("throttle").possible;
  if (range.low01 >= low && range.high99 <= high) {
    return {
      unit: percent,
      why: stated === null ? `no unit in the header; % fits ${span(range)}` : "the header names %",
      isFromValues: false,
    };
  }
  return { doubt: `${span(range)} is no share, per cent or servo pulse`, options: ["%", "us"] };
}

function span(range: ColumnRange): string {
  return `${shown(range.low01)} to ${shown(range.high99)}`;
}

function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
