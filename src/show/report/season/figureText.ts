import { type Quantity, quantityText, unitText } from "../../../base/quantity/index.ts";

/** A quantity for a table whose head says the unit: "2310 ± 50", or "not known". */
export function figureText(quantity: Quantity): string {
  if (quantity.value === null) return "not known";
  return quantityText(quantity).replaceAll(` ${unitText(quantity.unit)}`, "");
}
