import { html, joined, type Markup, NOTHING } from "./markup/markup.ts";
import type { PanelPhase } from "./panel.ts";
import { percentOf, percentText } from "./position.ts";
import { spreadLabels } from "./spreadLabels.ts";

/** Share of a 700 px strip that the longest phase name takes, percent. */
const NAME_PERCENT = 8.5;
const MOST_NAMES = 9;

/** The phases along the shared time axis: a band per phase and its name on a leader, longest phases first. */
export function phaseStrip(
  phases: readonly PanelPhase[],
  fromX: number,
  toX: number,
  names: { readonly nameId: string; readonly descriptionId: string },
): Markup {
  const named = new Set([...phases].sort((a, b) => b.toX - b.fromX - (a.toX - a.fromX)).slice(0, MOST_NAMES));
  const shown = phases.filter((phase) => named.has(phase));
  const middles = shown.map((phase) => percentOf((phase.fromX + phase.toX) / 2, fromX, toX));
  const placed = spreadLabels(middles, NAME_PERCENT);
  const labels = shown.map((phase, index) => name(phase, middles[index] ?? 0, placed[index] ?? 0));
  const bands = phases.map((phase) => band(phase, fromX, toX));
  return html`<svg class="phase-strip" role="img" aria-labelledby="${names.nameId}" aria-describedby="${names.descriptionId}" focusable="false">${bands}${joined(labels)}</svg>`;
}

function name(phase: PanelPhase, middle: number, placed: number): Markup {
  const leader = html`<line class="leader" x1="${percentText(placed)}" y1="16" x2="${percentText(middle)}" y2="24"/>`;
  return html`${leader}<text x="${percentText(placed)}" y="12" text-anchor="middle">${phase.words}</text>`;
}

function band(phase: PanelPhase, fromX: number, toX: number): Markup {
  const from = percentOf(phase.fromX, fromX, toX);
  const to = percentOf(phase.toX, fromX, toX);
  if (!(to > from)) return NOTHING;
  return html`<rect class="tint-${phase.tint} banded" x="${percentText(from)}" width="${percentText(to - from)}" y="24" height="10"/>`;
}
