import type { Quantity } from "./quantity.ts";
import { KILOGRAMS_PER_POUND, METRES_PER_FOOT } from "./units.ts";

/** Units that a person reads in; everything inside stays in the unit of its name. */
export type DisplayUnits = "metric" | "imperial";

/** A unit in another one: `shown = value * factor + offset`. */
interface OtherUnit {
  readonly unit: string;
  readonly factor: number;
  readonly offset: number;
}

const other = (unit: string, factor: number, offset = 0): OtherUnit => ({ unit, factor, offset });

/** A difference of temperatures ("degC difference") has no zero point to move. */
const IMPERIAL: ReadonlyMap<string, OtherUnit> = new Map([
  ["degC", other("degF", 1.8, 32)],
  ["degC difference", other("degF", 1.8)],
  ["kg", other("lb", 1 / KILOGRAMS_PER_POUND)],
  ["W/kg", other("W/lb", KILOGRAMS_PER_POUND)],
  ["m", other("ft", 1 / METRES_PER_FOOT)],
]);

const SAME: OtherUnit = other("", 1);

function otherUnit(unit: string, units: DisplayUnits): OtherUnit {
  const found = units === "imperial" ? IMPERIAL.get(unit) : undefined;
  return found ?? { ...SAME, unit: unit === "degC difference" ? "degC" : unit };
}

/** The unit that numbers of `unit` are shown in. */
export function displayedUnit(unit: string, units: DisplayUnits): string {
  return otherUnit(unit, units).unit;
}

/** A number in the unit it is shown in. */
export function displayedNumber(value: number, unit: string, units: DisplayUnits): number {
  const { factor, offset } = otherUnit(unit, units);
  return value * factor + offset;
}

/** Digits of a number in a field: enough for any fact, few enough that 100 degC is 212 degF. */
const FIELD_DIGITS = 7;

/** A number as a field shows it: whole in its own unit, converted ones to seven digits. */
export function fieldNumber(value: number, unit: string, units: DisplayUnits): string {
  const shown = displayedNumber(value, unit, units);
  return String(shown === value ? value : Number(shown.toPrecision(FIELD_DIGITS)));
}

/** What was typed in the unit shown, in its own unit. */
export function numberFromDisplayed(shown: number, unit: string, units: DisplayUnits): number {
  const { factor, offset } = otherUnit(unit, units);
  if (factor === 1 && offset === 0) return shown;
  return Number(((shown - offset) / factor).toPrecision(FIELD_DIGITS));
}

/** A quantity with its interval in the units shown. */
export function displayedQuantity(quantity: Quantity, units: DisplayUnits): Quantity {
  const unit = displayedUnit(quantity.unit, units);
  if (unit === quantity.unit) return quantity;
  if (quantity.value === null) return { ...quantity, unit };
  const shown = (value: number): number => displayedNumber(value, quantity.unit, units);
  const { value, low, high } = quantity;
  return {
    ...quantity,
    unit,
    value: shown(value),
    low: low === null ? null : shown(low),
    high: high === null ? null : shown(high),
  };
}
