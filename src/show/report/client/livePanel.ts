import type { PanelSeries } from "../../charts/index.ts";
import type { ChartData, ChartDataPanel } from "../panels/chartData.ts";
import { created, setAll } from "./redraw.ts";

/** One panel on the page: its figure, its data, and what the script added to it. */
export interface LivePanel {
  readonly figure: Element;
  readonly data: ChartDataPanel;
  readonly series: readonly PanelSeries[];
  readonly pad: HTMLElement;
  readonly cursor: Element;
  readonly dots: readonly Element[];
  readonly selection: Element;
}

/** Finds a panel on the page and adds its cursor, its selection and the slider that takes keys and pointer. */
export function livePanel(
  section: HTMLElement,
  data: ChartDataPanel,
  whole: ChartData,
  times: readonly number[],
): LivePanel | null {
  const figure = section.querySelector(`[data-panel="${data.id}"]`);
  const plot = figure?.querySelector("svg.plot");
  const row = figure?.querySelector(".drawing");
  if (!figure || !plot || !row) return null;
  const selection = created(plot, "rect", { class: "selection", y: "0", height: "100%", display: "none" });
  const cursor = created(plot, "line", { class: "cursor-line", y1: "0", y2: "100%", display: "none" });
  const dots = data.series.map(() =>
    created(plot, "circle", { class: "cursor-dot", r: "4.5", display: "none" }),
  );
  plot.append(selection, cursor, ...dots);
  const pad = section.ownerDocument.createElement("div");
  setAll(pad, {
    class: "cursor-pad",
    role: "slider",
    tabindex: "0",
    "aria-label": `Cursor in ${data.title}`,
    "aria-valuemin": "0",
    "aria-valuemax": String(times.length - 1),
  });
  row.append(pad);
  return { figure, data, series: liveSeries(data, whole, times), pad, cursor, dots, selection };
}

function liveSeries(
  panel: ChartDataPanel,
  { fromS }: ChartData,
  times: readonly number[],
): readonly PanelSeries[] {
  const per = 10 ** panel.decimals;
  return panel.series.map(({ id, words, values, gapsMs }) => ({
    id,
    words,
    style: 1,
    trace: {
      x: times,
      y: values.map((value) => (value === null ? Number.NaN : value / per)),
      first: 0,
      last: times.length - 1,
      gaps: gapsMs.map(([from, to]) => ({ from: fromS + from / 1000, to: fromS + to / 1000 })),
    },
  }));
}
