import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const CHROMIUM = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";
const ARGUMENTS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** True when there is a browser to test with. In CI its absence is a failure, elsewhere a said skip. */
export function hasBrowser(): boolean {
  if (existsSync(CHROMIUM)) return true;
  if (process.env.CI === "true") throw new Error(`no Chromium at ${CHROMIUM}; set CHROMIUM_PATH`);
  return false;
}

export function withBrowser(title: string): string {
  return hasBrowser() ? title : `${title} (skipped: no Chromium at ${CHROMIUM}; set CHROMIUM_PATH)`;
}

export function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: ARGUMENTS });
}
