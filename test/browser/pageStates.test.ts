import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFindings } from "./axe.ts";
import { hasBrowser, withBrowser } from "./browser.ts";
import { contrasts, type MarkContrast } from "./contrast.ts";
import { addStyle } from "./desk.ts";
import { PageDesk } from "./pageDesk.ts";
import { walkStates } from "./pageStates.ts";

const under = (all: readonly MarkContrast[], least: number): readonly MarkContrast[] =>
  all.filter(({ ratio }) => ratio < least);

describe.skipIf(!hasBrowser())(withBrowser("every state of the page"), () => {
  let desk: PageDesk;
  beforeAll(async () => {
    desk = await PageDesk.open();
  });
  afterAll(() => desk?.close());

  it("has no axe violation, text at 4.5:1, marks and frames at 3:1, in light and in dark", async () => {
    const { context, page, problems } = await desk.page();
    const states: string[] = [];
    let marksSeen = 0;
    await walkStates(page, async (state) => {
      states.push(state);
      for (const colorScheme of ["light", "dark"] as const) {
        // Without motion: a colour half way through its change is nobody's state.
        await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
        const where = `${state}, ${colorScheme}`;
        expect(await axeFindings(page, "all"), where).toEqual([]);
        const { marks, texts, controls, smallestPx } = await contrasts(page);
        expect(under(texts, 4.5), where).toEqual([]);
        expect(under([...marks, ...controls], 3), where).toEqual([]);
        expect(texts.length, where).toBeGreaterThan(8);
        expect(controls.length, where).toBeGreaterThan(1);
        expect(smallestPx, where).toBeGreaterThanOrEqual(12);
        marksSeen += marks.length;
      }
    });
    expect(states.length).toBeGreaterThanOrEqual(22);
    expect(marksSeen).toBeGreaterThan(500);
    expect(problems).toEqual([]);
    await addStyle(page, ":root { --edge: #55524b; --quiet: #6b675f; --two: #3a4a55 }");
    const { marks, texts, controls } = await contrasts(page);
    for (const [all, least] of [
      [marks, 3],
      [texts, 4.5],
      [controls, 3],
    ] as const)
      expect(under(all, least).length, "what is too faint is seen").toBeGreaterThan(0);
    await context.close();
  }, 240_000);
});
