import { existsSync, readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { checkBytes, stoppedBy } from "../truth/checkSimulated.ts";
import { gap } from "../truth/gap.ts";

interface ExpectedFlight {
  readonly kind: "flight" | "benchRun";
  readonly complete: boolean;
  readonly startS: number;
  readonly endS: number;
  readonly flightTimeS: number | null;
  readonly chargeUsedMah: number;
  readonly energyUsedWh: number;
  readonly peakCurrentA: number;
  readonly restCellV: number;
  readonly minCellV: number;
  readonly controllerPeakC: number;
  readonly staticCurrentA: number | null;
  readonly staticPowerW: number | null;
  readonly staticRpm: number | null;
}

interface Expected {
  readonly about: string;
  readonly rows: number;
  /** Share of charge and energy that may differ; wider where the log has holes. */
  readonly sumTolerance: number;
  readonly flightTimeToleranceS: number;
  readonly hasShaftSpeed: boolean;
  readonly flights: readonly ExpectedFlight[];
}

const folder = import.meta.dirname;
const cases = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(resolve(folder, entry.name, "expected.json")))
  .map(({ name }) => name);

describe("golden cases", () => {
  it("are found", () => {
    expect(cases.length).toBeGreaterThanOrEqual(5);
  });

  it.each(cases)("%s", (name) => {
    const textOf = (file: string) => readFileSync(resolve(folder, name, file), "utf8");
    const expected = JSON.parse(textOf("expected.json")) as Expected;
    const checked = checkBytes(readFileSync(resolve(folder, name, "log.csv")), textOf("aircraft.json"));
    expect(stoppedBy(checked)).toBe("");
    expect(checked.log.rows).toBe(expected.rows);
    const shapes = (flights: readonly { kind: string; complete: boolean }[]) =>
      flights.map(({ kind, complete }) => ({ kind, complete }));
    expect(shapes(checked.flights)).toEqual(shapes(expected.flights));
    const failures = expected.flights.flatMap((truth, index) =>
      flightGaps(checked.flights[index]!, truth, expected).map((miss) => `flight ${index + 1}: ${miss}`),
    );
    expect(failures).toEqual([]);
  });
});

type CheckedFlight = ReturnType<typeof checkBytes>["flights"][number];

function flightGaps(
  { measures, startS, endS }: CheckedFlight,
  truth: ExpectedFlight,
  expected: Expected,
): string[] {
  const { sumTolerance, flightTimeToleranceS, hasShaftSpeed } = expected;
  const sum = (value: number) => sumTolerance * value;
  const near = (value: number | null, share: number) => share * (value ?? 0);
  return [
    ...(Math.abs(startS - truth.startS) <= 2 ? [] : [`startS ${startS}, expected ${truth.startS}`]),
    ...(Math.abs(endS - truth.endS) <= 2 ? [] : [`endS ${endS}, expected ${truth.endS}`]),
    ...gap("chargeUsedMah", measures.chargeUsedMah, truth.chargeUsedMah, sum(truth.chargeUsedMah)),
    ...gap("energyUsedWh", measures.energyUsedWh, truth.energyUsedWh, sum(truth.energyUsedWh)),
    ...(truth.complete
      ? gap("flightTimeS", measures.flightTimeS, truth.flightTimeS, flightTimeToleranceS)
      : []),
    ...gap("peakCurrentA", measures.peakCurrentA, truth.peakCurrentA, near(truth.peakCurrentA, 0.02)),
    ...gap("restCellV", measures.restCellV, truth.restCellV, 0.03),
    ...gap("minCellV", measures.minCellV, truth.minCellV, 0.03),
    ...gap("controllerPeakC", measures.controllerPeakC, truth.controllerPeakC, 1.5),
    ...gap("staticCurrentA", measures.staticCurrentA, truth.staticCurrentA, near(truth.staticCurrentA, 0.02)),
    ...gap("staticPowerW", measures.staticPowerW, truth.staticPowerW, near(truth.staticPowerW, 0.02)),
    ...(hasShaftSpeed
      ? gap("staticRpm", measures.staticRpm, truth.staticRpm, near(truth.staticRpm, 0.01))
      : []),
  ];
}
