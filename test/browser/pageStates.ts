import type { Page } from "playwright-core";
import { flightLog } from "../commands/bookMachine.ts";
import { fail, hold, release } from "./coreGate.ts";
import { csvFile, readLogs, takeAircraft, ternLog } from "./pageDesk.ts";

/** A log whose header names nothing: the page must ask. */
export const UNNAMED_LOG = csvFile(
  "one.csv",
  `a,b,c\n${Array.from({ length: 600 }, (_, row) => `${row / 5},${33 - row / 400},${20 + (row % 7)}`).join("\n")}\n`,
);
export const NO_LOG = csvFile("photo.csv", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 255, 254]));

/** Looks at the page in a state that it was brought into. */
type Look = (state: string) => Promise<void>;

/** Brings a page with a gate before its core through every state that it has, one after the other. */
export async function walkStates(page: Page, look: Look): Promise<void> {
  await logStates(page, look);
  await aircraftStates(page, look);
  await flightStates(page, look);
  await bookStates(page, look);
}

async function logStates(page: Page, look: Look): Promise<void> {
  await look("log, empty");
  await page.locator("#go-swap").click();
  await page.locator("#swap-fields button").waitFor();
  await look("what if, without aircraft");
  await page.locator("#go-logbook").click();
  await page.locator("#book-view .empty").waitFor();
  await look("logbook, empty");
  await page.locator("#go-log").click();
  await hold(page, "check");
  await page.locator("#logs-input").setInputFiles([UNNAMED_LOG, NO_LOG]);
  await page.locator("#logs progress").waitFor();
  await look("log, busy");
  await release(page);
  await page.locator(".asks").waitFor();
  await page.locator("#logs .state", { hasText: "cannot be used" }).waitFor();
  await look("log, question");
  await page.locator("#logs button", { hasText: "photo.csv" }).click();
  await page.locator("#report .foot").waitFor();
  await look("log, refused");
}

async function aircraftStates(page: Page, look: Look): Promise<void> {
  await page.locator("#go-aircraft").click();
  await look("aircraft, none");
  await page
    .locator("#aircraft-input")
    .setInputFiles(csvFile("bad.json", '{ "name": "Tern", "pack": { "cells": 99 } }'));
  await page.locator("#aircraft-refused li").waitFor();
  await look("aircraft, refused");
  await takeAircraft(page);
  await page.locator("#plan .headline").waitFor();
  await look("aircraft, plan");
  await page.locator('[data-key="controller.limitC"]').fill("999");
  await page.locator('[data-key="motor.kv"]').fill("many");
  await page.locator(".wrong:not([hidden])").nth(1).waitFor();
  await page.locator("#plan-now", { hasText: "waits" }).waitFor({ state: "attached" });
  await look("aircraft, wrong values");
  await page.locator('[data-key="controller.limitC"]').fill("100");
  await page.locator("#go-swap").click();
  await page.locator("#swap-view .headline").waitFor();
  await page.getByRole("button", { name: "Blades: more" }).click();
  await page.locator('[data-swap="cells"]').fill("88");
  await page.locator("#swap-now", { hasText: "Predicted" }).waitFor({ state: "attached" });
  await page.locator("#swap-view .budget-lines li").first().waitFor();
  await look("what if, changed");
}

async function flightStates(page: Page, look: Look): Promise<void> {
  await page.locator("#go-log").click();
  await readLogs(page, csvFile("short.csv", flightLog({ currentA: 31 })));
  await readLogs(page, ternLog("flight-01"));
  await page.locator("#logs button", { hasText: "flight-01.csv" }).click();
  await page.locator("#report .foot").waitFor();
  await page.locator("#keep summary").click();
  await look("log, full");
  await page.locator("#keep [name=ambientC]").fill("900");
  await page.getByRole("button", { name: "Keep this log" }).click();
  await page.locator("#keep .wrong:not([hidden])").waitFor();
  await page.locator("#question summary").click();
  await page.evaluate(() => document.getElementById("report")?.replaceChildren());
  await look("log, wrong fact and columns open");
  await page.locator("#keep [name=ambientC]").fill("20");
  await page.getByRole("button", { name: "Keep this log" }).click();
  await page.locator(".kept").waitFor();
  await look("log, kept");
}

async function bookStates(page: Page, look: Look): Promise<void> {
  await page.locator("#go-logbook").click();
  await page.locator(".book-flights > li").waitFor();
  await look("logbook, flights");
  await page.getByRole("button", { name: /^Facts of/ }).click();
  await look("logbook, facts");
  await page.getByRole("button", { name: /^Remove/ }).click();
  await look("logbook, remove");
  await fail(page, "remove");
  await page.getByRole("button", { name: "Yes, remove it" }).click();
  await page.locator("#status", { hasText: "fault" }).waitFor();
  await look("logbook, failed");
  await fail(page);
  for (const [view, there] of [
    ["Timer", "#book-view h2"],
    ["Trends", "#book-view h2"],
    ["Season report", "#book-report .foot"],
  ] as const) {
    await page.getByRole("button", { name: view, exact: true }).click();
    await page.locator(there).first().waitFor();
    if (view === "Timer") {
      await page.locator(".next-flight [name=startPct]").fill("300");
      await page.locator(".next-flight .wrong:not([hidden])").waitFor();
    }
    await look(`logbook, ${view.toLowerCase()}`);
  }
  await page.getByRole("button", { name: "Flights", exact: true }).click();
  await page.getByRole("button", { name: /^Open the report/ }).click();
  await page.locator("#book-report .foot").waitFor();
  await look("logbook, a flight's report");
}
