// A log of 60,000 rows dropped on the page: node scripts/bench-page.mjs. CPU time of the page's and the worker's
// tasks from the browser's own trace, so that a busy machine does not change it much.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { writeLog } from "./bench/writeLog.mjs";
import { pageText } from "./pageFile.mjs";

const ROWS = 60_000;
const RATE_HZ = 50;
const TIMES = 5;
const AIRCRAFT = resolve(import.meta.dirname, "../fixtures/tern/aircraft.json");

const folder = mkdtempSync(join(tmpdir(), "bench-page-"));
writeFileSync(join(folder, "page.html"), await pageText());
writeLog(join(folder, "long.csv"), ROWS, RATE_HZ, 1);
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
