import { html, joined, type Markup } from "./markup/markup.ts";
import { percentText } from "./position.ts";

/** One step of a sum: the stretch of the whole it takes, as shares from 0 to 1. */
export interface SumStep {
  readonly from: number;
  readonly to: number;
  /** `rest` is what stays, `taken` what a step takes away. */
  readonly kind: "rest" | "taken";
}

/** The bar of one step on the scale of the whole; the line under it is the whole. */
export function sumDrawing({ from, to, kind }: SumStep): Markup {
  const [low, high] = [clamp(Math.min(from, to)), clamp(Math.max(from, to))];
  const base = html`<line class="budget-base" x1="0" x2="100%" y1="17" y2="17"/>`;
  const width = percentText(Math.max(100 * (high - low), 0.4));
  const bar = html`<rect class="sum-${kind}" x="${percentText(100 * low)}" width="${width}" y="4" height="12"/>`;
  return html`<svg class="sum-scale" aria-hidden="true" focusable="false">${joined([base, bar])}</svg>`;
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0, share));
}
