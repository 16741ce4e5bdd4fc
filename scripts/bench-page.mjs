// A log of 60,000 rows dropped on the page: node scripts/bench-page.mjs. CPU time of the page's and the worker's
// tasks from the browser's own trace, so that a busy machine does not change it much.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { pageText } from "./pageFile.mjs";

const ROWS = 60_000;
const TIMES = 5;
const AIRCRAFT = resolve(import.meta.dirname, "../fixtures/tern/aircraft.json");

const folder = mkdtempSync(join(tmpdir(), "bench-page-"));
writeFileSync(join(folder, "page.html"), await pageText());
writeFileSync(join(folder, "long.csv"), longLog());
const executablePath = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";
const args = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--js-flags=--expose-gc"];
const browser = await chromium.launch({ executablePath, args });
const page = await (await browser.newContext({ offline: true })).newPage();
await page.goto(pathToFileURL(join(folder, "page.html")).href);
await page.getByText("Ready for a log.").waitFor();
await page.locator("#aircraft-input").setInputFiles(AIRCRAFT);
await page.getByText("limits of Tern").first().waitFor({ state: "attached" });
console.log(
  "log  longest task of the page  all tasks of the page  all tasks of the worker  (CPU ms)  page heap MB",
);
for (let time = 1; time <= TIMES; time += 1) console.log([time, ...(await drop())].join("  "));
await browser.close();
rmSync(folder, { recursive: true });

async function drop() {
  await page.evaluate(() => document.getElementById("report").replaceChildren());
  await browser.startTracing(page, { categories: ["toplevel", "__metadata"] });
  await page.locator("#logs-input").setInputFiles(join(folder, "long.csv"));
  await page.locator("#report .foot").waitFor({ state: "attached" });
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString("utf8"));
  const heapMb = await page.evaluate(() => {
    gc();
    return performance.memory.usedJSHeapSize / 1e6;
  });
  const main = cpuOf(traceEvents, /^CrRendererMain$/);
  const worker = cpuOf(traceEvents, /DedicatedWorker/i);
  return [Math.max(...main), sum(main), sum(worker), heapMb].map(Math.round);
}

function sum(values) {
  return values.reduce((all, one) => all + one, 0);
}

/** Milliseconds of CPU of each task of the threads of a name; time that other programs took is not in it. */
function cpuOf(events, name) {
  const threads = events.filter((one) => one.name === "thread_name" && name.test(one.args.name));
  const isOwn = ({ pid, tid }) => threads.some((thread) => thread.pid === pid && thread.tid === tid);
  return events.filter((one) => /RunTask$/.test(one.name) && isOwn(one)).map(({ tdur = 0 }) => tdur / 1000);
}

/** Twenty minutes at 50 rows a second, with the eight channels that most loggers have. */
function longLog() {
  const rows = [
    "Time (s),Voltage (V),Current (A),RPM,ESC temp (C),Throttle (%),Altitude (m),Capacity used (mAh)",
  ];
  let usedMah = 0;
  for (let row = 0; row < ROWS; row += 1) {
    const atS = row / 50;
    const isFlown = atS > 20 && atS < 1150;
    const currentA = isFlown ? 10 + 4 * Math.sin(atS / 7) + Math.sin(atS * 3.1) : 0.2;
    usedMah += currentA / 50 / 3.6;
    const volts = 33.2 - usedMah / 1500 - currentA * 0.04;
    const warm = isFlown ? 30 * (1 - Math.exp((20 - atS) / 200)) : 0;
    const moving = (middle, half, slow) => (isFlown ? Math.round(middle + half * Math.sin(atS / slow)) : 0);
    const cells = [atS.toFixed(2), volts.toFixed(2), currentA.toFixed(2), moving(4000, 700, 7)];
    rows.push(
      [...cells, (25 + warm).toFixed(1), moving(45, 15, 7), moving(40, 20, 30), usedMah.toFixed(0)].join(","),
    );
  }
  return `${rows.join("\n")}\n`;
}
