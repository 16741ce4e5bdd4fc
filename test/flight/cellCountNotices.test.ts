import { describe, expect, it } from "vitest";
import { runInMemory } from "../commands/inMemory.ts";

/** A flight of a pack that rests at 25.2 V. */
const LOG = [
  "Time (s),Voltage (V),Current (A),RPM",
  ...Array.from({ length: 400 }, (_, row) => {
    const isRunning = row >= 50 && row < 350;
    return `${(row / 5).toFixed(1)},${isRunning ? 23.4 : 25.2},${isRunning ? 40 + (row % 7) : 0.2},${isRunning ? 6000 : 0}`;
  }),
].join("\n");

const checked = (aircraftCells: number | null, ...words: readonly string[]) =>
  runInMemory(["check", "log.csv", ...(aircraftCells === null ? [] : ["--aircraft", "a.json"]), ...words], {
    files: { "log.csv": LOG, "a.json": `{"name":"A","pack":{"cells":${aircraftCells ?? 6}}}` },
  });

describe("the cell count against the volts at rest", () => {
  it("passes where it fits", async () => {
    const { exit, err, out } = await checked(6);
    expect(exit).toBe(0);
    expect(out).not.toMatch(/truly/);
    expect(err).not.toMatch(/cell/);
  });

  it("warns when fewer full cells fit better than low ones", async () => {
    const { exit, err, out } = await checked(7);
    expect(exit).toBe(0);
    expect(out).toMatch(/^If the pack truly has 7 cells \(it rests like 6 full ones\): /m);
    expect(err).toMatch(/rests at 25.2 V: 3.60 V a cell with 7 cells. 6 full cells fit better/);
    expect(err).toMatch(/try: .*--cells 6/);
  });

  it("asks for another count, also when the command line gave it", async () => {
    for (const ran of [await checked(4), await checked(null, "--cells", "4")]) {
      expect(ran.exit).toBe(4);
      expect(ran.err).toMatch(/--cells 6/);
      expect(ran.err).not.toMatch(/--unit/);
    }
  });

  it("names the count among the causes of a charge left that cannot be, where the start rests on it", async () => {
    const causes = async (cells: number, capacityMah: number) => {
      const aircraft = `{"name":"A","pack":{"cells":${cells},"capacityMah":${capacityMah}}}`;
      const files = { "log.csv": LOG, "a.json": aircraft };
      const { err, out } = await runInMemory(["check", "log.csv", "--aircraft", "a.json", "--json"], {
        files,
      });
      const { measures, judgements } = JSON.parse(out).flights[0];
      expect(measures.chargeLeftPct.value).toBeLessThan(0);
      const judged = judgements.find(({ source }: { source: string }) => source === "reservePct").text;
      return { err, judged };
    };
    const doubtful = await causes(7, 500);
    expect(doubtful.err).toMatch(
      /Check the cell count, pack.capacityMah, --start-pct and sensors.currentScale/,
    );
    expect(doubtful.judged).toMatch(/less than nothing: check the cell count, pack.capacityMah/);
    const full = await causes(6, 500);
    expect(full.err).toMatch(/Check pack.capacityMah, --start-pct and sensors.currentScale/);
    expect(full.judged).toMatch(/less than nothing: check pack.capacityMah/);
  });

  it("obeys a count that the user insists on while such a cell can be, and warns", async () => {
    const { exit, err, out } = await checked(6, "--cells", "8");
    expect(exit).toBe(0);
    expect(out).toMatch(/^If the pack truly has 8 cells/m);
    expect(err).toMatch(
      /warning: The pack rests at 25.2 V: with 8 cells that is 3.15 V a cell, which does not fit/,
    );
    expect((await checked(8)).exit).toBe(4);
  });
});
