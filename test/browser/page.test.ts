import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { FlightCheck } from "../../src/flight/check/index.ts";
import { BookMachine, flightLog } from "../commands/bookMachine.ts";
import { LOG_STYLES, TERN as SIMULATED, simulateFlight, usualSpec, writeLog } from "../generator/index.ts";
import { ATTACK_STRINGS } from "../support/attackStrings.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { checkOf } from "./coreGate.ts";
import { different } from "./different.ts";
import {
  AIRCRAFT,
  allRead,
  csvFile,
  numbersIn,
  PageDesk,
  readLogs,
  takeAircraft,
  ternLog,
} from "./pageDesk.ts";
import { UNNAMED_LOG } from "./pageStates.ts";

const AIRCRAFT_TEXT = readFileSync(AIRCRAFT, "utf8");
/** Written out so that a header, a cell or a name of any kind is one cell of a log. */
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

describe.skipIf(!hasBrowser())(withBrowser("the page from disk, offline"), () => {
  let desk: PageDesk;
  beforeAll(async () => {
    desk = await PageDesk.open();
    expect(desk.text.length).toBeLessThan(700_000);
  });
  afterAll(() => desk?.close());

  it("starts its worker and shows every number of the check to the last digit", async () => {
    const { context, page, problems } = await desk.page();
    await takeAircraft(page);
    await readLogs(page, ternLog("flight-01"));
    await page.locator("#report .flight").first().waitFor();
    expect(await page.locator("#slow").isHidden()).toBe(true);
    await page.locator("#report .foot").waitFor();
    const check = await checkOf(page, "flight-01.csv");
    const measures = Object.entries(check.flights[0]?.measures ?? {});
    const known = measures.filter(([, { value }]) => value !== null);
    const shown = await numbersIn(page, "#report");
    expect(known.length).toBeGreaterThan(10);
    for (const [name, { value }] of known) expect(shown.get(name), name).toContain(value);
    const machine = new BookMachine({ "tern.json": AIRCRAFT_TEXT });
    machine.files["flight-01.csv"] = readFileSync(ternLog("flight-01"));
    expect(different(check, await machine.json("check flight-01.csv --aircraft tern.json"))).toEqual([]);
    await page.locator("[data-act=in]").first().click();
    expect(problems).toEqual([]);
    await context.close();
  });

  it("reads every header style as the command does, number by number", async () => {
    const { context, page, problems } = await desk.page();
    const { logged } = simulateFlight(
      usualSpec(5, SIMULATED, { script: { flightS: 60 }, sensors: { rateHz: 5 } }),
    );
    const styles = Object.entries(LOG_STYLES).map(([name, style]) =>
      csvFile(`${name}.csv`, Buffer.from(writeLog(logged, style))),
    );
    expect(styles.length).toBeGreaterThanOrEqual(9);
    await readLogs(page, styles);
    expect(await page.locator("#logs .state").allTextContents()).toEqual(styles.map(() => "1 flight"));
    for (const { name, buffer } of styles) {
      const machine = new BookMachine({ [name]: buffer });
      const expected = await machine.json<FlightCheck>(`check ${name}`);
      expect(expected.flights, name).toHaveLength(1);
      expect(different(await checkOf(page, name), expected), name).toEqual([]);
    }
    expect(problems).toEqual([]);
    await context.close();
  });

  it("asks in place by keyboard, remembers the answer for the next log of that header", async () => {
    const { context, page, problems } = await desk.page({ viewport: { width: 320, height: 700 } });
    await page.locator("#logs-input").setInputFiles(UNNAMED_LOG);
    await page.getByText("needs an answer").first().waitFor();
    for (const [column, channel] of [
      [1, "time"],
      [2, "packVoltage"],
      [3, "current"],
    ] as const)
      await page.locator(`select[aria-label^="Column ${column},"]`).selectOption(channel);
    await page.getByText("Read again with these columns").press("Enter");
    await page
      .locator("#logs li", { hasText: /flight|unit|answer/ })
      .first()
      .waitFor();
    const seconds = page.getByRole("button", { name: "The time is in s", exact: true });
    await seconds.or(page.locator("#report .flight")).first().waitFor();
    if (await seconds.isVisible()) await seconds.press("Enter");
    await page.locator("#report .flight").first().waitFor();
    await page.locator("#logs-input").setInputFiles({ ...UNNAMED_LOG, name: "two.csv" });
    await page.getByText("read as you answered before").first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    expect(problems).toEqual([]);
    await context.close();
  });

  it("opens the log that was chosen, whatever is read before it", async () => {
    const { context, page } = await desk.page();
    const files = [1, 2, 3, 4].map((number) =>
      csvFile(`log-${number}.csv`, flightLog({ currentA: 20 + number })),
    );
    await page.locator("#logs-input").setInputFiles(files);
    await page.getByRole("button", { name: "log-3.csv" }).click();
    await allRead(page);
    await page.locator("#report .foot").waitFor();
    expect(await page.locator("#report .file").first().textContent()).toContain("log-3.csv");
    await context.close();
  });

  it("shows attack strings in headers, cells, file, aircraft, pack and note as text, even without its policy", async () => {
    const { context, page } = await desk.page({ bypassCSP: true });
    const asking = ATTACK_STRINGS.map((attack, at) =>
      csvFile(`${attack}${at}.csv`, `${quoted(attack)},b,c\n${quoted(attack)},1,2\n1,2,3\n`),
    );
    // A file with a zero byte in it is refused: the rest may stand in a log that is read.
    const attacks = ATTACK_STRINGS.filter((attack) => !attack.includes("\0"));
    const [header = "", ...rows] = flightLog().trimEnd().split("\n");
    const more = attacks.map(quoted).join(",");
    const read = csvFile(`${attacks[6]}.csv`, [header, ...rows].map((row) => `${row},${more}`).join("\n"));
    const attacked = JSON.stringify({
      name: ATTACK_STRINGS[3],
      pack: { cells: 8, capacityMah: 5000 },
      propeller: { diameterIn: 18, pitchIn: 10, family: ATTACK_STRINGS[4] },
    });
    await page.locator("#aircraft-input").setInputFiles(csvFile(`${ATTACK_STRINGS[5]}.json`, attacked));
    await page.locator("#held", { hasText: "limits of" }).waitFor();
    await readLogs(page, asking);
    const names = await page.locator("#logs button").allTextContents();
    expect(names).toEqual(asking.map(({ name }) => name));
    for (const show of await page.locator("#logs button").all()) await show.click();
    await readLogs(page, read);
    await page.locator("#report .foot").waitFor();
    const headers = (await page.locator("#question .pickers strong").allTextContents()).slice(5);
    // What a reader would act on is shown by its code; the rest stands there as it is.
    const plain = attacks.filter((attack) => /^[ -~]+$/.test(attack));
    expect(headers).toHaveLength(attacks.length);
    expect(headers.map((text) => text.replace(/^\d+\. /, ""))).toEqual(expect.arrayContaining(plain));
    await page.locator("#keep summary").click();
    await page.locator("#keep [name=pack]").fill(ATTACK_STRINGS[1] ?? "");
    await page.locator("#keep [name=note]").fill(ATTACK_STRINGS[0] ?? "");
    await page.getByRole("button", { name: "Keep this log" }).click();
    await page.locator(".kept").waitFor();
    await page.locator("#go-aircraft").click();
    await page.locator("#plan .headline").waitFor();
    expect(await page.locator("[data-key=name]").inputValue()).toBe(ATTACK_STRINGS[3]);
    await page.locator("#go-swap").click();
    await page.locator("#swap-view .headline").waitFor();
    await page.locator("#go-logbook").click();
    for (const view of ["Timer", "Trends", "Season report", "Flights"]) {
      await page.getByRole("button", { name: view, exact: true }).click();
      await page.locator("#book-view h2, #book-report .foot").first().waitFor();
    }
    const flight = page.locator(".book-flights > li");
    await flight.waitFor();
    expect(await flight.textContent()).toContain(`“${ATTACK_STRINGS[0]}”`);
    expect(await flight.textContent()).toContain(`pack ${ATTACK_STRINGS[1]}`);
    await page.getByRole("button", { name: /^Open the report/ }).click();
    await page.locator("#book-report .foot").waitFor();
    expect(await page.locator("#book-report h1").textContent()).toBe(ATTACK_STRINGS[3]);
    expect(await page.evaluate(() => "__pwn" in globalThis)).toBe(false);
    expect(page.url()).toBe(desk.address);
    expect(await page.locator("main :is(img, iframe, form, object, embed, video, link, base)").count()).toBe(
      0,
    );
    await context.close();
  });
});
