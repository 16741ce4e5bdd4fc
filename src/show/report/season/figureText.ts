import { type Quantity, quantityText, unitText } from "../../../base/quantity/index.ts";

/** A quantity for a table whose head says the unit: "2310 ± 50", or "not known". Breaks only before a bracket. */
export function figureText(quantity: Quantity): string {
  if (quantity.value === null) return "not known";
  const unit = unitText(quantity.unit);
  const full = quantityText(quantity);
  const text = unit === "" ? full : full.replaceAll(` ${unit}`, "");
  return text.replaceAll(" ± ", "\u00a0±\u00a0").replaceAll(" to ", "\u00a0to\u00a0");
}
