import type { Panel } from "./panel.ts";
import { percentOf, percentText } from "./position.ts";
import type { ValueScale } from "./valueScale.ts";

/** Percent positions in one panel. */
export class Placing {
  readonly panel: Panel;
  readonly scale: ValueScale;
  constructor(panel: Panel, scale: ValueScale) {
    this.panel = panel;
    this.scale = scale;
  }
  xPercent(x: number): number {
    return percentOf(x, this.panel.fromX, this.panel.toX);
  }
  x(x: number): string {
    return percentText(this.xPercent(x));
  }
  yPercent(value: number): number {
    return percentOf(value, this.scale.to, this.scale.from);
  }
  y(value: number): string {
    return percentText(this.yPercent(value));
  }
  width(fromX: number, toX: number): string {
    return percentText(Math.max(0, this.xPercent(toX) - this.xPercent(fromX)));
  }
}
