import {
  anchorAt,
  endHeights,
  linePath,
  MOST_TIME_TICKS,
  type PanelSeries,
  percentOf,
  percentText,
  timeTicks,
} from "../../charts/index.ts";
import type { ChartDataPanel } from "../panels/chartData.ts";
import { clockTenths } from "./reading.ts";
import type { View } from "./view.ts";

const COLUMNS = 800;
const CHARACTER_PX = 6.6;

/** Puts everything of a panel that has a time where the view wants it. */
export function redrawPanel(
  figure: Element,
  panel: ChartDataPanel,
  series: readonly PanelSeries[],
  view: View,
): void {
  for (const element of figure.querySelectorAll("[data-x]")) place(element, view);
  redrawLines(figure, panel, series, view);
  redrawTimeAxis(figure, view);
}

function place(element: Element, view: View): void {
  const x = Number(element.getAttribute("data-x"));
  const to = Number(element.getAttribute("data-to") ?? x);
  const isHidden = to < view.fromS || x > view.toS;
  element.toggleAttribute("hidden", isHidden);
  element.setAttribute("display", isHidden ? "none" : "inline");
  if (isHidden) return;
  const from = percentOf(Math.max(x, view.fromS), view.fromS, view.toS);
  const end = percentOf(Math.min(to, view.toS), view.fromS, view.toS);
  if (element.tagName === "rect") setAll(element, { x: percentText(from), width: percentText(end - from) });
  else if (element.tagName === "line") setAll(element, { x1: percentText(from), x2: percentText(from) });
  else setAll(element, { x: percentText(from) });
  placeWords(element, from, end);
}

/** Labels keep inside the plot; a phase's name shows only where it fits. */
function placeWords(element: Element, from: number, end: number): void {
  if (element.classList.contains("mark")) {
    const lean = element.getAttribute("data-lean");
    const side = lean === "left" || lean === "right" ? lean : "middle";
    element.querySelector("text")?.setAttribute("text-anchor", anchorAt(from, side));
  } else if (element.classList.contains("gap-words")) {
    element.setAttribute("text-anchor", anchorAt(from));
  } else if (element.tagName === "text") {
    const width = element.parentElement?.clientWidth ?? 0;
    const need = (element.textContent ?? "").length * CHARACTER_PX + 8;
    element.setAttribute("class", "");
    element.setAttribute("display", ((end - from) / 100) * width >= need ? "inline" : "none");
  }
}

function redrawLines(
  figure: Element,
  panel: ChartDataPanel,
  series: readonly PanelSeries[],
  view: View,
): void {
  const [fromY, toY] = panel.scale;
  const window = { fromX: view.fromS, toX: view.toS, fromY, toY, columns: COLUMNS };
  const heights = endHeights({ series }, { from: fromY, to: toY, ticks: [], decimals: 0 }, view.toS);
  series.forEach(({ id, trace }, index) => {
    figure.querySelector(`path[data-series="${id}"]`)?.setAttribute("d", linePath(trace, window));
    const height = heights[index];
    const end = figure.querySelector(`.ends [data-series="${id}"]`);
    if (end && height !== null && height !== undefined) end.setAttribute("y", percentText(height));
  });
}

function redrawTimeAxis(figure: Element, view: View): void {
  const grid = figure.querySelector(".time-grid");
  const axis = figure.querySelector(".time-axis");
  if (!grid || !axis) return;
  const ticks = timeTicks(view.fromS, view.toS, MOST_TIME_TICKS);
  const isFine = view.toS - view.fromS < MOST_TIME_TICKS;
  grid.replaceChildren(
    ...ticks.map((tick) => gridLine(grid, percentText(percentOf(tick, view.fromS, view.toS)))),
  );
  axis.replaceChildren(
    ...ticks.map((tick, index) => {
      const words = isFine ? clockTenths(tick) : clockTenths(tick).replace(/\.0$/, "");
      return tickText(axis, percentText(percentOf(tick, view.fromS, view.toS)), words, index % 2 === 1);
    }),
  );
}

function gridLine(parent: Element, x: string): Element {
  return created(parent, "line", { class: "grid", x1: x, x2: x, y1: "0", y2: "100%" });
}

function tickText(parent: Element, x: string, words: string, isExtra: boolean): Element {
  const text = created(parent, "text", {
    class: isExtra ? "extra" : "",
    x,
    y: "15",
    "text-anchor": "middle",
  });
  text.textContent = words;
  return text;
}

/** A new element in the parent's own namespace. */
export function created(
  parent: Element,
  name: string,
  attributes: Readonly<Record<string, string>>,
): Element {
  const element = parent.ownerDocument.createElementNS(parent.namespaceURI, name);
  setAll(element, attributes);
  return element;
}

export function setAll(element: Element, attributes: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
}
