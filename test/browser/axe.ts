import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Which rules are asked: all; all but contrast; contrast only. Contrast takes most of the time. */
const ASKED = {
  all: { runOnly: AXE_TAGS },
  layout: { runOnly: AXE_TAGS, rules: { "color-contrast": { enabled: false } } },
  theme: { runOnly: { type: "rule", values: ["color-contrast", "link-in-text-block"] } },
};

interface Axe {
  readonly run: (
    what: unknown,
    how: unknown,
  ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
}

/** What axe finds wrong with a page as it is. */
export async function axeFindings(page: Page, asked: keyof typeof ASKED): Promise<readonly string[]> {
  const isThere = await page.evaluate(() => "axe" in globalThis);
  if (!isThere) await page.evaluate(AXE);
  return page.evaluate(async (how) => {
    const { axe } = globalThis as unknown as { axe: Axe };
    const { violations } = await axe.run(document, { ...how, resultTypes: ["violations"] });
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`,
    );
  }, ASKED[asked]);
}

/**
 * What axe finds wrong with a report at 320, 768 and 1280 px in light, and in dark. What is shown at 768 px is shown at
 * one of the other widths, so contrast is not asked again there; a theme changes nothing but contrast.
 */
export async function axeProblems(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const [width, asked] of [
    [1280, "all"],
    [768, "layout"],
    [320, "all"],
  ] as const) {
    await page.setViewportSize({ width, height: 900 });
    found.push(...(await axeFindings(page, asked)).map((one) => `${width} px: ${one}`));
  }
  await page.emulateMedia({ colorScheme: "dark" });
  return [...found, ...(await axeFindings(page, "theme")).map((one) => `dark: ${one}`)];
}
