import { describe, expect, it } from "vitest";
import { COUNTS, loggedPilot } from "./loggedPilots.ts";

/** Two pilots in all: the figures over many are those of scripts/bench-timer.ts. */
describe("pilots whose flights are written as logs and read back (seeds 901, 902)", () => {
  it("get a timer from each number of flights and keep the reserve and the go-around", () => {
    const scores = [...loggedPilot(0.08, 901), ...loggedPilot(0.15, 902)];
    expect(scores.map(({ count }) => count)).toEqual([...COUNTS, ...COUNTS]);
    for (const { count, kept, later, touchdownByS, length } of scores) {
      console.log(`${count} logged, kept ${kept} of ${later}, length ${length.toFixed(2)}`);
      expect(touchdownByS).toBeGreaterThan(60);
      expect(length).toBeGreaterThan(0.55);
      expect(length).toBeLessThan(1.3);
    }
    // Later flights of one pilot share the logged ones, so that misses come together: 5 % of all, not of each.
    const share = (pick: (score: (typeof scores)[number]) => number) =>
      scores.reduce((sum, score) => sum + pick(score), 0);
    expect(share(({ kept }) => kept) / share(({ later }) => later)).toBeGreaterThanOrEqual(0.85);
  }, 120_000);
});
