import { percentOf, percentText } from "../../charts/index.ts";
import type { ChartData } from "../panels/chartData.ts";
import { type LivePanel, livePanel } from "./livePanel.ts";
import { momentWords, nearestSample, panelReading, sampleTimes } from "./reading.ts";
import { redrawPanel, setAll } from "./redraw.ts";
import { fittedView, isWhole, pannedView, type View, zoomedView } from "./view.ts";

const ZOOM_STEP = 0.5;
const PAN_SHARE = 0.25;

/** The stacked panels of one flight: one view and one cursor for all of them. */
export class Stack {
  readonly times: readonly number[];
  readonly panels: readonly LivePanel[];
  private readonly section: HTMLElement;
  private readonly data: ChartData;
  private readonly whole: View;
  private view: View;
  private sample: number | null = null;

  constructor(section: HTMLElement, data: ChartData) {
    this.section = section;
    this.data = data;
    this.whole = { fromS: data.fromS, toS: data.toS };
    this.view = this.whole;
    this.times = sampleTimes(data);
    this.panels = data.panels.flatMap((panel) => livePanel(section, panel, data, this.times) ?? []);
    this.showView();
    this.showCursor();
  }

  act(action: string): void {
    const centreS = this.sample === null ? (this.view.fromS + this.view.toS) / 2 : this.atSample();
    if (action === "in") this.show(zoomedView(this.view, this.whole, ZOOM_STEP, centreS));
    if (action === "out") this.show(zoomedView(this.view, this.whole, 1 / ZOOM_STEP, centreS));
    if (action === "earlier") this.show(pannedView(this.view, this.whole, -PAN_SHARE));
    if (action === "later") this.show(pannedView(this.view, this.whole, PAN_SHARE));
    if (action === "whole") this.show(this.whole);
  }

  /** Time at a share (0 to 1) of a plot's width. */
  timeAt(share: number): number {
    return this.view.fromS + Math.min(1, Math.max(0, share)) * (this.view.toS - this.view.fromS);
  }

  show(view: View): void {
    this.view = fittedView(view, this.whole);
    this.showView();
    this.showCursor();
  }

  pointAt(atS: number): void {
    this.moveTo(nearestSample(this.times, atS));
  }

  /** Moves the cursor by samples; from nowhere it starts at the beginning of the view. */
  moveBy(samples: number): void {
    if (this.sample === null) this.pointAt(this.view.fromS);
    else this.moveTo(this.sample + samples);
  }

  moveTo(sample: number): void {
    this.sample = Math.min(this.times.length - 1, Math.max(0, sample));
    const atS = this.atSample();
    if (atS < this.view.fromS || atS > this.view.toS) {
      const span = this.view.toS - this.view.fromS;
      this.show({ fromS: atS - span / 2, toS: atS + span / 2 });
    } else this.showCursor();
  }

  clear(): void {
    this.sample = null;
    this.showCursor();
  }

  select(fromShare: number | null, toShare: number): void {
    for (const { selection } of this.panels) {
      selection.setAttribute("display", fromShare === null ? "none" : "inline");
      if (fromShare === null) continue;
      const from = Math.min(fromShare, toShare);
      setAll(selection, {
        x: percentText(100 * from),
        width: percentText(100 * Math.abs(toShare - fromShare)),
      });
    }
  }

  private atSample(): number {
    return this.times[this.sample ?? 0] ?? 0;
  }

  private showView(): void {
    for (const { figure, data, series } of this.panels) redrawPanel(figure, data, series, this.view);
    for (const button of this.section.querySelectorAll<HTMLButtonElement>("[data-act]")) {
      const isAtWhole = isWhole(this.view, this.whole);
      const isIdle = isAtWhole && button.dataset.act !== "in";
      button.setAttribute("aria-disabled", String(isIdle));
    }
  }

  private showCursor(): void {
    const { sample } = this;
    const moment = sample === null ? "" : momentWords(this.data, this.atSample());
    const words = this.section.querySelector("[data-cursor-words]");
    if (words) words.textContent = moment;
    for (const panel of this.panels) this.showPanelCursor(panel, moment);
  }

  private showPanelCursor(panel: LivePanel, moment: string): void {
    const { sample } = this;
    const reading = sample === null ? "" : panelReading(panel.data, sample);
    const readout = panel.figure.querySelector("[data-readout]");
    if (readout) readout.textContent = reading;
    setAll(panel.pad, {
      "aria-valuenow": String(sample ?? 0),
      "aria-valuetext": sample === null ? "no sample chosen" : `${reading} at ${moment}`,
    });
    const x = percentText(percentOf(this.atSample(), this.view.fromS, this.view.toS));
    setAll(panel.cursor, { x1: x, x2: x, display: sample === null ? "none" : "inline" });
    panel.dots.forEach((dot, index) => {
      const value = sample === null ? Number.NaN : (panel.series[index]?.trace.y[sample] ?? Number.NaN);
      const [from, to] = panel.data.scale;
      const isShown = !Number.isNaN(value);
      setAll(dot, {
        cx: x,
        cy: isShown ? percentText(percentOf(value, to, from)) : "0",
        display: isShown ? "inline" : "none",
      });
    });
  }
}
