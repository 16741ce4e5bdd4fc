import { html, type Markup, trusted } from "./markup/markup.ts";

/** Each verdict has its own outline, told apart without colour: ring, half disc at a wall, crossed square, dash. */
const SHAPES = {
  within: '<circle class="shape" cx="8" cy="8" r="5.5"/>',
  close: '<path class="shape" d="M2 14L8 2.5L14 14z"/>',
  outside: '<path class="shape solid" d="M2 2h12v12h-12z"/><path class="cross" d="M5 5l6 6M11 5l-6 6"/>',
  "not judged": '<path class="shape" d="M3 8h10"/>',
} as const;

export type VerdictWord = keyof typeof SHAPES;

/** A 16 px mark for a verdict; the word always stands beside it. */
export function verdictShape(verdict: VerdictWord): Markup {
  return html`<svg class="verdict-shape" width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false">${trusted(SHAPES[verdict])}</svg>`;
}
