import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { type Checked, checkBytes, stoppedBy } from "./checkSimulated.ts";
import { covers, gap } from "./gap.ts";

interface TruthLog {
  readonly file: string;
  readonly dropOuts: readonly unknown[];
  readonly sensors: { readonly ampGain: number; readonly voltGain: number };
  readonly flights: readonly {
    readonly flight: number | null;
    readonly kind: string;
    readonly complete: boolean;
    readonly flightTimeS: number | null;
    readonly chargeUsedMah: number;
    readonly restCellV: number;
    readonly minCellV: number;
    readonly controllerPeakC: number;
    readonly peakRpm: number;
  }[];
}

const folder = resolve(import.meta.dirname, "../../fixtures/tern");
const textOf = (file: string) => readFileSync(resolve(folder, file), "utf8");
const { logs } = JSON.parse(textOf("truth.json")) as { logs: readonly TruthLog[] };
const notes = JSON.parse(textOf("season.json")) as { logs: readonly { file: string; ambientC: number }[] };
const aircraftText = textOf("aircraft.json");

function checkedFile(file: string): Checked {
  const ambientC = notes.logs.find((log) => log.file === file)?.ambientC ?? null;
  return checkBytes(readFileSync(resolve(folder, file)), aircraftText, ambientC);
}

function missesOf(log: TruthLog, checked: Checked): string[] {
  return log.flights.flatMap((truth, index) => {
    const { measures } = checked.flights[index]!;
    // The season's current sensor reads low by a constant factor: what the log says is truth times that.
    const loggedMah = truth.chargeUsedMah * log.sensors.ampGain;
    const sumShare = log.dropOuts.length > 0 ? 0.03 : 0.005;
    return [
      ...gap("chargeUsedMah", measures.chargeUsedMah, loggedMah, sumShare * loggedMah),
      ...gap("restCellV", measures.restCellV, truth.restCellV, 0.03),
      ...gap("minCellV", measures.minCellV, truth.minCellV, 0.03),
      ...gap("peakRpm", measures.peakRpm, truth.peakRpm, 0.01 * truth.peakRpm),
      ...(truth.complete && truth.kind === "flight"
        ? gap("flightTimeS", measures.flightTimeS, truth.flightTimeS, 15)
        : []),
    ];
  });
}

describe("the demo season, log by log", () => {
  it.each(logs)("$file is read without a question and tells what happened", (log) => {
    const checked = checkedFile(log.file);
    expect(stoppedBy(checked)).toBe("");
    const shape = (flights: readonly { kind: string; complete: boolean }[]) =>
      flights.map(({ kind, complete }) => `${kind} ${complete}`);
    expect(shape(checked.flights)).toEqual(shape(log.flights));
    expect(missesOf(log, checked)).toEqual([]);
  });

  it("covers the true charge of every flight although the current sensor reads low", () => {
    const missed = logs.flatMap((log) => {
      const { flights } = checkedFile(log.file);
      return log.flights.filter(
        (truth, index) => !covers(flights[index]!.measures.chargeUsedMah, truth.chargeUsedMah),
      );
    });
    expect(missed.map(({ flight }) => flight)).toEqual([]);
  });
});
