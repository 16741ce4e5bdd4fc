import { describe, expect, it } from "vitest";
import { runInMemory } from "../commands/inMemory.ts";

/** Rest, 4 s of full throttle on the ground, taxi, a flight at 160 (feet), landed; `noise` shakes the altitude. */
function logWith(header: string, noise: number): string {
  const rows = Array.from({ length: 1000 }, (_, row) => {
    const atS = row / 5;
    const isFull = atS >= 20 && atS < 24;
    const isFlying = atS >= 40 && atS < 160;
    const isTaxi = atS >= 24 && atS < 170;
    const amps = isFull ? 55 + (row % 3) / 10 : isFlying ? 30 : isTaxi ? 3 : 0.2;
    const rpm = isFull ? 7000 : isFlying ? 5500 : isTaxi ? 1500 : 0;
    const throttle = isFull ? 100 : isFlying ? 60 : isTaxi ? 10 : 0;
    const height = (isFlying ? 160 : 0) + noise * ((row % 3) - 1);
    return `${atS.toFixed(1)},${(33.4 - 0.05 * amps).toFixed(2)},${amps},${rpm},${throttle},${height.toFixed(1)}`;
  });
  return [`Time (s),Voltage (V),Current (A),RPM,Throttle (%),${header}`, ...rows].join("\n");
}

const checked = (header: string, noise: number, ...words: readonly string[]) =>
  runInMemory(["check", "log.csv", "--aircraft", "a.json", "--json", ...words], {
    files: { "log.csv": logWith(header, noise), "a.json": '{"name":"A","pack":{"cells":8}}' },
  });
const staticRpm = (out: string) => JSON.parse(out).flights[0].measures.staticRpm;

describe("an altitude without a unit", () => {
  it("is asked about where read as metres it costs the static run, with the true reason", async () => {
    const { out, err, exit } = await checked("Alt", 3);
    expect(exit).toBe(0);
    expect(staticRpm(out)).toMatchObject({ value: null, why: expect.stringContaining("altitude changes") });
    expect(err).toMatch(/warning: Column "Alt" names no unit and is read in m/);
    expect(err).toMatch(/try: .*--unit altitude=ft/);
    expect(err).toMatch(/try: .*--unit altitude=m/);
  });

  it("is not asked about once the unit is said or the static run is found", async () => {
    for (const ran of [
      await checked("Alt", 3, "--unit", "altitude=ft"),
      await checked("Alt (ft)", 3),
      await checked("Alt", 0.3),
    ]) {
      expect(ran.err).not.toMatch(/altitude/);
      expect(staticRpm(ran.out).value).toBe(7000);
    }
    expect((await checked("Alt", 3, "--unit", "altitude=m")).err).not.toMatch(/names no unit/);
  });
});
