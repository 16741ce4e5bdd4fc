import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { openBrowser } from "./browser.ts";

/** A page and everything it did that it should not have done. */
export interface Watched {
  readonly page: Page;
  readonly problems: string[];
}

/** How the reader of a report sits in front of it. */
export interface Seat {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  readonly forcedColors?: "active" | "none";
  readonly media?: "print";
  /** The test changes the page, so that the next one has to load it again. */
  readonly changes?: boolean;
}

/** One browser with one page that the tests of a file share: loading and starting are what costs. */
export class Desk {
  readonly folder: string;
  readonly #browser: Browser;
  readonly #watched: Watched;
  readonly #file: string;
  #shown: string | null = null;

  private constructor(folder: string, browser: Browser, watched: Watched, file: string) {
    this.folder = folder;
    this.#browser = browser;
    this.#watched = watched;
    this.#file = file;
  }

  static async open(name: string): Promise<Desk> {
    const folder = mkdtempSync(join(tmpdir(), `${name}-`));
    const file = join(folder, `${name}.html`);
    const browser = await openBrowser();
    return new Desk(folder, browser, await watchedPage(browser, file, { hasTouch: true }), file);
  }

  async close(): Promise<void> {
    await this.#browser.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** The shared page with this report; loaded only if it shows another one or a test changed it. */
  async show(text: string, seat: Seat = {}): Promise<Watched> {
    const { width = 1280, height = 900, changes = false, ...media } = seat;
    const { page } = this.#watched;
    await page.setViewportSize({ width, height });
    await page.emulateMedia({
      colorScheme: "light",
      forcedColors: "none",
      media: null,
      reducedMotion: "reduce",
      ...media,
    });
    if (this.#shown !== text) {
      this.#watched.problems.length = 0;
      writeFileSync(this.#file, text);
      await page.goto(pathToFileURL(this.#file).href);
    }
    this.#shown = changes ? null : text;
    return this.#watched;
  }

  /** A page of its own, for what cannot be changed on an open one; to be closed with its context. */
  async fresh(text: string, options: BrowserContextOptions): Promise<Watched> {
    const file = join(this.folder, "fresh.html");
    writeFileSync(file, text);
    const watched = await watchedPage(this.#browser, file, options);
    await watched.page.goto(pathToFileURL(file).href);
    return watched;
  }
}

async function watchedPage(browser: Browser, file: string, options: BrowserContextOptions): Promise<Watched> {
  const size = { width: 1280, height: 900 };
  const context = await browser.newContext({ offline: true, viewport: size, ...options });
  const page = await context.newPage();
  const problems: string[] = [];
  const address = pathToFileURL(file).href;
  page.on("pageerror", (error) => problems.push(`error: ${error.message}`));
  page.on("console", (message) => problems.push(`console: ${message.text()}`));
  page.on("request", (request) => {
    if (request.url() !== address) problems.push(`request: ${request.url()}`);
  });
  page.on("framenavigated", (frame) => {
    if (frame.url() !== address && frame.url() !== "about:blank") problems.push(`went to ${frame.url()}`);
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.log(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { page, problems };
}

/** Adds a style as the policy allows none to be written into the page; the page is changed by it. */
export function addStyle(page: Page, css: string): Promise<void> {
  return page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }, css);
}

export function overflowPx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** WCAG 2.2, 1.4.12 text spacing. */
export const TEXT_SPACING =
  "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }";

/** Names of what the Tab key reaches, in order. */
export async function tabbed(page: Page, most: number): Promise<readonly string[]> {
  const seen: string[] = [];
  for (let step = 0; step < most; step++) {
    await page.keyboard.press("Tab");
    const name = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === document.body) return "";
      return element?.getAttribute("aria-label") ?? element?.textContent?.slice(0, 60) ?? "";
    });
    if (name === "" || name === seen[0]) break;
    seen.push(name);
  }
  return seen;
}

export function openDetails(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
}

/** Targets of a page smaller than 24 px either way. */
export function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("button, summary, .cursor-pad, a")]
      .map((element) => ({ box: element.getBoundingClientRect(), html: element.outerHTML.slice(0, 80) }))
      .filter(({ box }) => box.width < 24 || box.height < 24)
      .map(({ html }) => html),
  );
}

export async function pdfPages(page: Page, format: string): Promise<number> {
  const pdf = await page.pdf({ format, printBackground: false });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

export function countElements(page: Page): Promise<number> {
  return page.evaluate(() => document.querySelectorAll("*").length);
}

export function withoutPolicy(text: string): string {
  return text.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
}
