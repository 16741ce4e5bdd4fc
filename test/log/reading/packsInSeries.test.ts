import { describe, expect, it } from "vitest";
import { NO_FACTS } from "../../../src/aircraft/facts.ts";
import { analyseRecording } from "../../../src/flight/analysis/index.ts";
import { NO_READING_OPTIONS, readLog } from "../../../src/log/reading/index.ts";
import { recordLog } from "../../../src/log/recording/index.ts";
import { seededRandom } from "../../generator/index.ts";

/** Two packs of `cells` each in series; the second has `weakness` times the resistance of the first. */
function logText(names: readonly string[], cells: number, weakness: number, withSum = false): string {
  const random = seededRandom(7);
  const rows: string[] = [`time_s,${names.join(",")}${withSum ? ",pack_v" : ""},current_a`];
  let amps = 0.3;
  for (let row = 0; row < 900; row++) {
    if (row % 25 === 0) amps = row < 50 || row > 850 ? 0.3 : random.between(5, 60);
    const half = (ohm: number) => cells * 4.15 - row / 1500 - ohm * amps + 0.004 * random.normal();
    const volts = [half(0.02), half(0.02 * weakness)];
    const cellsOfRow = [...volts, ...(withSum ? [volts[0]! + volts[1]!] : [])];
    rows.push([row / 5, ...cellsOfRow.map((value) => value.toFixed(2)), amps.toFixed(1)].join(","));
  }
  return rows.join("\n");
}

function read(text: string, cells: number | null) {
  return readLog(new TextEncoder().encode(text), { ...NO_READING_OPTIONS, cells }, []);
}

function analysed(text: string, cells: number) {
  const outcome = read(text, cells);
  if (outcome.state !== "read") throw new Error(outcome.notices.map((notice) => notice.text).join(" "));
  const recording = recordLog(outcome.log, NO_FACTS.sensors);
  const facts = { ...NO_FACTS, pack: { ...NO_FACTS.pack, cells } };
  return { recording, flight: analyseRecording(recording, facts, { ambientC: null, startPct: null })[0]! };
}

describe("two packs in series, each with a column of its own", () => {
  it.each([[["pack1_v", "pack2_v"]], [["front pack [V]", "rear pack [V]"]], [["U1", "U2"]]])(
    "%s are read as halves, their sum as the pack, and the weaker one is named",
    (names) => {
      const { recording, flight } = analysed(logText(names, 4, 1.4), 8);
      expect(recording.notices.map(({ code }) => code)).toContain("packs-in-series");
      expect(recording.channels.get("packVoltage")![0]).toBeCloseTo(8 * 4.15, 0);
      expect(flight.weakestPart).toMatchObject({ kind: "pack", weakest: 2 });
      expect(flight.notices.find(({ code }) => code === "weakest-pack")!.text).toContain(
        "Pack 2 is the weakest",
      );
    },
  );

  it("names none of two alike, and keeps a column of both together", () => {
    const { recording, flight } = analysed(logText(["pack1_v", "pack2_v"], 4, 1, true), 8);
    expect(recording.notices.map(({ code }) => code)).not.toContain("packs-in-series");
    expect(flight.weakestPart).toMatchObject({ kind: "pack", weakest: null });
  });

  it.each([
    ["the cells are not known", null, ["pack1_v", "pack2_v"]],
    ["each alone fits them", 4, ["pack1_v", "pack2_v"]],
    ["the sum does not fit them", 12, ["pack1_v", "pack2_v"]],
  ] as const)("stays a question where %s", (_, cells, names) => {
    const outcome = read(logText(names, 4, 1), cells);
    expect(outcome.state).toBe("question");
  });
});
