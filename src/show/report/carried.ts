import type { Quantity } from "../../base/quantity/index.ts";
import { html, type Markup, NOTHING } from "../charts/index.ts";

/** Attributes with the whole number beside the rounded text, so that no digit is lost on the way to a reader. */
export function carried(name: string, { value, ...ends }: Quantity): Markup {
  if (value === null) return NOTHING;
  const { low = null, high = null } = "low" in ends ? ends : {};
  return html` data-measure="${name}"${number("value", value)}${number("low", low)}${number("high", high)}`;
}

/** The same for a number without interval. */
export function carriedNumber(name: string, value: number | null): Markup {
  return value === null ? NOTHING : html` data-measure="${name}"${number("value", value)}`;
}

function number(end: "value" | "low" | "high", value: number | null): Markup {
  return value === null ? NOTHING : html` data-${end}="${String(value)}"`;
}
