// Pictures of every state of the page: npm run pictures -- FOLDER. At 1280 and 320 px, light and dark, and as printed.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { PageDesk } from "../test/browser/pageDesk.ts";
import { walkStates } from "../test/browser/pageStates.ts";

const folder = process.argv[2] ?? "page-pictures";
/** A report is many screens long: its first ones are enough. */
const MOST_HEIGHT = { 1280: 3200, 320: 4800 } as const;

mkdirSync(folder, { recursive: true });
const desk = await PageDesk.open();
const { context, page } = await desk.page();
let count = 0;
await walkStates(page, async (state) => {
  count += 1;
  const name = `${String(count).padStart(2, "0")}-${state.replace(/\W+/g, "-")}`;
  for (const width of [1280, 320] as const) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      await page.waitForTimeout(120);
      const height = Math.min(
        MOST_HEIGHT[width],
        await page.evaluate(() => document.documentElement.scrollHeight),
      );
      const clip = { x: 0, y: 0, width, height };
      await page.screenshot({
        path: join(folder, `${name}-${width}-${colorScheme}.png`),
        clip,
        fullPage: true,
      });
    }
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: "light", media: "print" });
  const height = Math.min(2400, await page.evaluate(() => document.documentElement.scrollHeight));
  await page.screenshot({
    path: join(folder, `${name}-print.png`),
    clip: { x: 0, y: 0, width: 1280, height },
    fullPage: true,
  });
  await page.emulateMedia({ media: null });
});
await context.close();
await desk.close();
console.log(`${count} states in ${folder}`);
