import { jsonText } from "./jsonText.ts";
import { HERON, STORK, SWIFT, TERN, WREN } from "./namedAircraft.ts";
import { USUAL_SCRIPT } from "./script.ts";
import { type FlightSpec, simulateFlight, usualSpec } from "./simulate.ts";
import { LOG_STYLES, type LogStyleKey } from "./styles.ts";
import type { FlightTruth, SortieTruth } from "./truth.ts";
import { writeLog } from "./writeLog.ts";

interface GoldenCase {
  readonly name: string;
  readonly about: string;
  readonly spec: FlightSpec;
  readonly style: LogStyleKey;
}

const SHORT = { flightS: 120, lowPass: false };

function twoFlights(): FlightSpec {
  const spec = usualSpec(102, SWIFT, { script: SHORT, sensors: { rateHz: 4 } });
  const first = { ...USUAL_SCRIPT, ...SHORT, flightS: 100, restAfterS: 70 };
  const second = { ...first, restBeforeS: 60, restAfterS: 20 };
  return { ...spec, sorties: [first, second] };
}

/** Small cases, each about one thing. */
export const GOLDEN_CASES: readonly GoldenCase[] = [
  {
    name: "bench-run",
    about: "steps of throttle on the ground, no flight",
    spec: { ...usualSpec(101, STORK, { sensors: { rateHz: 5 } }), sorties: ["bench"] },
    style: "plainWords",
  },
  {
    name: "two-flights",
    about: "two flights on one charge with a pause of over two minutes, altitude logged",
    spec: twoFlights(),
    style: "symbolsWithDecimalComma",
  },
  {
    name: "dropouts",
    about: "sensor cells blank for 3 s and 8 s, lines missing for 5 s",
    spec: usualSpec(103, HERON, {
      script: { ...SHORT, flightS: 150 },
      sensors: {
        rateHz: 5,
        dropOuts: [
          { startS: 80.1, lengthS: 3.2, kind: "blank" },
          { startS: 110.1, lengthS: 8.2, kind: "blank" },
          { startS: 150.1, lengthS: 5.2, kind: "rows" },
        ],
      },
    }),
    style: "dateAndClockWithExtras",
  },
  {
    name: "cut-short",
    about: "the log stops in flight, under power",
    spec: usualSpec(104, WREN, { script: SHORT, sensors: { rateHz: 5, endS: 120 } }),
    style: "tabsWithUnitsRow",
  },
  {
    name: "touch-and-go-from-power-alone",
    about: "no altitude, no speed over ground or through air; one touch-and-go",
    spec: usualSpec(105, TERN, {
      script: { ...SHORT, flightS: 200, touchAndGo: true },
      sensors: { rateHz: 5, channels: ["packVoltage", "current", "controllerTemperature"] },
    }),
    style: "pipesInFahrenheit",
  },
];

/** The numbers that a golden case is held to; the tolerances stand in the test. */
function expectedFlight(sortie: SortieTruth) {
  const { kind, complete, startS, endS, takeOffS, touchdownS, flightTimeS, chargeUsedMah, energyUsedWh } =
    sortie;
  const { peakCurrentA, restCellV, minCellV, staticCurrentA, staticPowerW, staticRpm, controllerPeakC } =
    sortie;
  const times = { startS, endS, takeOffS, touchdownS, flightTimeS };
  const sums = { chargeUsedMah, energyUsedWh };
  const levels = { peakCurrentA, restCellV, minCellV, controllerPeakC };
  return { kind, complete, ...times, ...sums, ...levels, staticCurrentA, staticPowerW, staticRpm };
}

function expected({ about, style, spec }: GoldenCase, truth: FlightTruth, rows: number) {
  return {
    about,
    style: LOG_STYLES[style].name,
    seed: spec.seed,
    rows,
    // Holes are bridged by an estimate, so a log with holes is held less closely.
    sumTolerance: spec.sensors.dropOuts.length > 0 ? 0.03 : 0.005,
    flightTimeToleranceS: spec.sensors.channels.includes("altitude") ? 5 : 15,
    hasShaftSpeed: spec.sensors.channels.includes("shaftSpeed"),
    flights: truth.sorties.map(expectedFlight),
  };
}

const README = `# Golden cases

Each folder is one case: log.csv, aircraft.json, expected.json (the simulator's own truth). The suite scans this folder.
Made by \`node scripts/run-typescript.mjs scripts/generate-season.ts\` from fixed seeds (test/generator/goldenFiles.ts).
`;

/** Every file of test/golden by its path below that folder. */
export function goldenFiles(): ReadonlyMap<string, Uint8Array> {
  const text = (value: string) => new TextEncoder().encode(value);
  const files = new Map<string, Uint8Array>([["README.md", text(README)]]);
  for (const golden of GOLDEN_CASES) {
    const { logged, truth, facts } = simulateFlight(golden.spec);
    files.set(`${golden.name}/log.csv`, writeLog(logged, LOG_STYLES[golden.style]));
    files.set(`${golden.name}/aircraft.json`, text(jsonText(facts)));
    files.set(`${golden.name}/expected.json`, text(jsonText(expected(golden, truth, logged.rows))));
  }
  return files;
}
