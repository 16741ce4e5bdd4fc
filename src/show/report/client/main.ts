import type { ChartData } from "../panels/chartData.ts";
import { listen } from "./listen.ts";
import { Stack } from "./stack.ts";

/** Adds cursor and zoom to every stack of panels, and opens the tables while printing. */
function start(): void {
  for (const section of document.querySelectorAll<HTMLElement>("[data-stack]")) {
    const block = section.querySelector("script[data-chart]");
    const data = JSON.parse(block?.textContent ?? "null") as ChartData | null;
    if (data === null) continue;
    listen(new Stack(section, data), section);
    for (const element of section.querySelectorAll("[data-live]")) element.removeAttribute("hidden");
  }
  openWhilePrinting();
}

function openWhilePrinting(): void {
  let opened: HTMLDetailsElement[] = [];
  window.addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>("details:not([open])")];
    for (const details of opened) details.open = true;
  });
  window.addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
  });
}

start();
