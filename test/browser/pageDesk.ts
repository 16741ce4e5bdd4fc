import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
// @ts-expect-error a build script without types
import { pageText } from "../../scripts/pageFile.mjs";
import { openBrowser } from "./browser.ts";
import { addGate } from "./coreGate.ts";
import { openPage } from "./pageCore.ts";

export const TERN = resolve(import.meta.dirname, "../../fixtures/tern");
export const AIRCRAFT = join(TERN, "aircraft.json");
export const ternLog = (name: string): string => join(TERN, `${name}.csv`);

/** Built once for all files of tests that a process runs. */
let built: Promise<string> | undefined;
export function builtPage(): Promise<string> {
  built ??= pageText() as Promise<string>;
  return built;
}

export interface OpenedPage {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly problems: string[];
}

/** One browser and the page as one file on disk, shared by the tests of a file. */
export class PageDesk {
  readonly folder: string;
  readonly text: string;
  readonly address: string;
  readonly browser: Browser;

  private constructor(folder: string, text: string, browser: Browser) {
    this.folder = folder;
    this.text = text;
    this.browser = browser;
    const file = join(folder, "page.html");
    writeFileSync(file, text);
    this.address = pathToFileURL(file).href;
  }

  static async open(): Promise<PageDesk> {
    const folder = mkdtempSync(join(tmpdir(), "page-"));
    return new PageDesk(folder, await builtPage(), await openBrowser());
  }

  /** The page from disk in a context of its own, without a network; close the context when done. */
  async page(options: BrowserContextOptions = {}): Promise<OpenedPage> {
    const context = await this.context(options);
    return { context, ...(await openPage(context, this.address)) };
  }

  async context(options: BrowserContextOptions = {}): Promise<BrowserContext> {
    const context = await this.browser.newContext({ offline: true, ...options });
    context.setDefaultTimeout(20_000);
    await addGate(context);
    return context;
  }

  async close(): Promise<void> {
    await this.browser.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Takes the demo aircraft in, whichever place is open. */
export async function takeAircraft(page: Page, file: Files = AIRCRAFT): Promise<void> {
  await page.locator("#aircraft-input").setInputFiles(file);
  await page.locator("#held", { hasText: "limits of" }).waitFor({ state: "attached" });
}

/** A file made up by a test. */
export function csvFile(
  name: string,
  text: string | Buffer,
): { name: string; mimeType: string; buffer: Buffer } {
  return { name, mimeType: "text/csv", buffer: Buffer.from(text) };
}

type Files = Parameters<ReturnType<Page["locator"]>["setInputFiles"]>[0];

/** Gives logs to the page and waits until all are read. */
export async function readLogs(page: Page, files: Files): Promise<void> {
  await page.locator("#logs-input").setInputFiles(files);
  await allRead(page);
}

export async function allRead(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const states = [...document.querySelectorAll<HTMLElement>("#logs .state")];
    return (
      states.length > 0 &&
      states.every(({ dataset }) => dataset.state === "done" || dataset.state === "failed")
    );
  });
}

/** Every whole number that a part of the page carries, by the name of what it is of. */
export async function numbersIn(
  page: Page,
  selector: string,
): Promise<ReadonlyMap<string, readonly number[]>> {
  const pairs = await page
    .locator(`${selector} [data-measure]`)
    .evaluateAll((all) =>
      all.map(
        (one) => [one.getAttribute("data-measure") ?? "", Number(one.getAttribute("data-value"))] as const,
      ),
    );
  const byName = new Map<string, number[]>();
  for (const [name, value] of pairs) byName.set(name, [...(byName.get(name) ?? []), value]);
  return byName;
}
